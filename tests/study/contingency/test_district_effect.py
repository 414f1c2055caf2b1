"""What changes in a district do to the facts of the whole."""

from dataclasses import fields

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.contingency.district import District, Districts
from plumbnet.study.contingency.district_effect import Effect, Effects
from plumbnet.study.contingency.verdict_only import NotTold

RUNS = """street -> tee -> valve -> tee2 -> heater -> tap.hot
          tee2 -> tank
          tee2 -> tap.cold
          tee -> valve2 -> tee3 -> heater2 -> tap2.hot
          tee3 -> cv2 -> tank2
          tee -> tap3.cold
          tee -> tap4.cold"""
RELIEF = "relief: {pressure: 150 psi}"


def report(**parts: str) -> Report:
    return plumbnet.check(system(RUNS, **{"heater": RELIEF, "heater2": RELIEF, **parts}))


def around(of: Report, part: str, tee: str) -> tuple[Effects, District]:
    district = next(one for one in Districts(of.network).around([part]) if one.boundary.tee == tee)
    return Effects(of), district


def facts_with(of: Report, *made: tuple[str, str, Change]) -> Facts:
    """The facts of the whole with changes, each in the district of a part under a tee."""
    effects, at_rest = list[Effect](), list[Effect]()
    for part, tee, change in made:
        own, district = around(of, part, tee)
        for changes, found in (([change], effects), ([], at_rest)):
            effect = own.of(district, changes)
            assert effect is not None
            found.append(effect)
    whole = with_changes(of.system, [change for _, _, change in made])
    return Effects(of).facts(effects, at_rest, whole)


def test_change_inside_turns_the_heater_inside_and_no_other() -> None:
    of = report()
    facts = facts_with(of, ("valve", "tee", Change(close="valve")))
    assert {one.name: one.verdict for one in facts.heaters} == {"heater": Verdict.CONTROLLED, "heater2": Verdict.OPEN}
    assert [one.name for one in facts.heaters] == ["heater", "heater2"]


def test_two_effects_side_by_side_are_those_of_both() -> None:
    of = report()
    made = [("valve", "tee", Change(close="valve")), ("valve2", "tee", Change(close="valve2"))]
    facts = facts_with(of, *made)
    whole = plumbnet.check(with_changes(of.system, [change for _, _, change in made])).facts
    assert {one.name: one.verdict for one in facts.heaters} == {one.name: one.verdict for one in whole.heaters}
    assert {one.name: one.reached for one in facts.tanks} == {one.name: one.reached for one in whole.tanks}


def test_tank_that_only_water_from_beyond_reaches_is_reached() -> None:
    of = report(heater2="kind: tee", valve="state: shut")
    assert {one.name: one.reached for one in of.facts.tanks} == {"tank": True, "tank2": False}
    opened = report(heater2="kind: tee")
    facts = facts_with(opened, ("cv2", "tee3", Change.model_validate({"fail": "cv2"})))
    assert {one.name: one.reached for one in facts.tanks} == {"tank": True, "tank2": True}


def test_fixtures_inside_and_beyond_stand_as_they_do_in_the_whole() -> None:
    inside = report(street="kind: main, pressure: 100 psi", tap2="elevation: -9 ft")
    facts = facts_with(inside, ("valve2", "tee", Change(close="valve2")))
    whole = plumbnet.check(with_changes(inside.system, [Change(close="valve2")])).facts
    assert sorted(one.name for one in facts.taps) == ["tap", "tap2", "tap3", "tap4"]
    assert {one.name: one.static_pa for one in facts.taps} == {one.name: one.static_pa for one in whole.taps}


def test_change_that_is_felt_beyond_has_no_effect_of_its_own() -> None:
    of = report(valve2="state: shut", cv2="kind: tee")
    effects, district = around(of, "valve2", "tee")
    assert effects.of(district, [Change(open="valve2")]) is not None
    vented = report(valve2="state: shut", tank2="kind: vent, elevation: 200 ft", cv2="kind: tee")
    effects, district = around(vented, "valve2", "tee")
    assert effects.of(district, [Change(open="valve2")]) is None


def test_check_that_sticks_open_lets_heated_water_out_of_a_quiet_district() -> None:
    runs = """street -> cv -> tee -> cv2 -> tee2 -> heater -> tap.hot
              tee -> tank
              tee -> tap2.cold
              tee -> tap3.cold
              tee -> tap4.cold"""
    of = plumbnet.check(system(runs, heater=RELIEF))
    effects, district = around(of, "cv2", "tee")
    assert not district.boundary.beyond.takes_back
    assert (
        effects.of(district, [Change.model_validate({"set": {"part": "heater", "setpoint": "150 degF"}})]) is not None
    )
    assert effects.of(district, [Change.model_validate({"fail": "cv2"})]) is None


def test_last_heater_that_leaves_a_boundary_is_felt_by_the_tanks_beyond() -> None:
    runs = """street -> tee -> valve -> heater -> tap.hot
              tee -> cv -> tank
              tee -> tap2.cold
              tee -> tap3.cold"""
    of = plumbnet.check(system(runs, heater=RELIEF))
    effects, district = around(of, "valve", "tee")
    assert (district.is_heated_inside, district.is_heated_beyond) == (True, False)
    assert effects.of(district, [Change(close="valve")]) is None


def test_facts_that_were_not_put_together_are_withheld() -> None:
    facts = facts_with(report(), ("valve", "tee", Change(close="valve")))
    with pytest.raises(NotTold):
        list(facts.unreached)


def test_side_on_which_a_tank_hangs_is_withheld() -> None:
    facts = facts_with(report(), ("valve", "tee", Change(close="valve")))
    assert [(tank.name, tank.is_waterlogged) for tank in facts.tanks] == [("tank", False), ("tank2", False)]
    for tank in facts.tanks:
        with pytest.raises(NotTold):
            assert tank.on_hot_side


def test_heater_that_begins_to_fire_unasked_is_felt_by_reducers_beyond() -> None:
    runs = """street -> tee -> tankless -> tap.hot
              street2 -> prv -> tee
              tee -> tap2.cold
              tee -> tap3.cold
              tee -> tap4.cold"""
    of = plumbnet.check(system(runs, street2="kind: main, pressure: 60 psi", tankless=RELIEF), rules="upc-2024")
    assert [one.is_heated for one in of.facts.reducers] == [False]
    stored = {"set": {"part": "tankless", "kind": "storage_heater", "volume": "50 gal"}}
    with pytest.raises(NotTold):
        list(facts_with(of, ("tankless", "tee", Change.model_validate(stored))).reducers)


def test_growth_that_goes_back_is_told_only_where_nothing_of_it_changed() -> None:
    of = plumbnet.check(report().system, rules="uk-2010")
    charged = facts_with(of, ("tank", "tee2", Change.model_validate({"set": {"part": "tank", "precharge": "50 psi"}})))
    assert charged.returns == of.facts.returns
    with pytest.raises(NotTold):
        list(facts_with(of, ("valve", "tee", Change(close="valve"))).returns)


def test_reducers_are_told_only_where_nothing_they_rest_on_changed() -> None:
    of = report(cv2="kind: pressure_reducer, set: 40 psi, bypass: true")
    warmer = Change.model_validate({"set": {"part": "heater2", "setpoint": "150 degF"}})
    assert facts_with(of, ("heater2", "tee", warmer)).reducers == of.facts.reducers
    for change in ({"close": "valve2"}, {"fail": "tank2"}, {"set": {"part": "cv2", "set": "50 psi"}}):
        with pytest.raises(NotTold):
            list(facts_with(of, ("valve2", "tee", Change.model_validate(change))).reducers)
    assert facts_with(report(), ("valve2", "tee", Change(close="valve2"))).reducers == ()


def test_effect_says_whether_heated_water_comes_to_the_boundary_as_before() -> None:
    of = report()
    effects, district = around(of, "valve", "tee")
    shut, warm = (
        effects.of(district, [Change.model_validate(fields)])
        for fields in ({"close": "valve"}, {"set": {"part": "heater", "setpoint": "150 degF"}})
    )
    assert shut is not None
    assert warm is not None
    assert (shut.is_settled, warm.is_settled) == (False, True)


def test_what_is_put_together_or_withheld_is_every_list_of_the_facts() -> None:
    facts = facts_with(report(), ("valve", "tee", Change(close="valve")))
    left_to_chance = [each.name for each in fields(Facts) if getattr(facts, each.name) is each.default]
    assert left_to_chance == []
