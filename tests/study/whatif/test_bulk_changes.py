"""What is supposed of many layouts at once, as changes to each."""

import json

import pytest
from conftest import PSI, layout, system

import plumbnet
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.study.whatif.bulk_changes import FitEach, SetEach, Supposed, ToEach, joined_settings, to_each_of
from plumbnet.study.whatif.what_if import whatif

HOUSE = "street -> meter -> tee -> heater -> tap.hot"
TWO_SERVICES = "street -> tee -> heater -> tap.hot\nstreet -> valve -> tee"
INSIDE = "relief: {pressure: 150 psi}"


def verdicts(lines: str, *done: SetEach | FitEach) -> list[str]:
    report = plumbnet.check(system(lines, heater=INSIDE))
    scenario, changes = Supposed(None, done).touches(report.system)
    return [heater.verdict.value for heater in whatif(report, changes, scenario=scenario).after.heaters]


def said(done: SetEach | FitEach) -> list[str]:
    return [str(mistake) for mistake in done.mistakes()]


def test_every_meter_changed_for_one_with_a_check_traps_the_heater() -> None:
    assert verdicts(HOUSE) == ["open"]
    assert verdicts(HOUSE, SetEach("meter", {"check": True})) == ["trapped"]


def test_every_part_of_the_kind_is_changed_and_no_other() -> None:
    house = system(HOUSE)
    _, changes = Supposed(None, (SetEach("meter", {"check": True}),)).touches(house)
    assert [change.set.part for change in changes if change.set] == ["meter"]
    assert Supposed(None, (SetEach("softener", {"check": True}),)).touches(house) == (None, ())


def test_part_that_is_written_inside_another_is_changed_there() -> None:
    house = system(HOUSE, heater=INSIDE)
    changed = house.with_changes(Supposed(None, (SetEach("relief_valve", {"pressure": "125 psi"}),)).touches(house)[1])
    assert [round(outlet.opens_pa / PSI) for outlet in changed.parts["heater/relief"].outlets()] == [125]
    assert changed.written["heater"]["relief"] == {"pressure": "125 psi"}


def test_kind_can_become_another_with_all_that_it_needs() -> None:
    done = joined_settings(
        [SetEach("check_valve", {"kind": "pressure_reducer"}), SetEach("check_valve", {"set": "50 psi"})]
    )
    assert done == [SetEach("check_valve", {"kind": "pressure_reducer", "set": "50 psi"})]
    assert said(done[0]) == []
    house = system("street -> cv -> heater -> tap.hot")
    changed = house.with_changes(Supposed(None, tuple(done)).touches(house)[1])
    assert changed.parts["cv"].kind == "pressure_reducer"


def test_check_valve_behind_every_main_traps_the_heater() -> None:
    assert verdicts(HOUSE, FitEach("main", "check_valve", {})) == ["trapped"]


def test_every_pipe_that_leaves_gets_its_part_with_the_water_flowing_through() -> None:
    house = system(TWO_SERVICES)
    _, changes = Supposed(None, (FitEach("main", "meter", {"check": True}),)).touches(house)
    changed = house.with_changes(changes)
    new = [name for name, part in changed.parts.items() if part.kind == "meter"]
    assert new == ["street-meter", "street-meter-2"]
    assert [pipe.end.port for pipe in changed.pipes if pipe.end.part in new] == ["in", "in"]
    assert verdicts(TWO_SERVICES) == ["open"]
    assert verdicts(TWO_SERVICES, FitEach("main", "check_valve", {})) == ["trapped"]


def test_fittings_follow_each_other_on_one_main() -> None:
    house = system(HOUSE)
    done = (FitEach("main", "meter", {}), FitEach("main", "check_valve", {}), FitEach("meter", "valve", {}))
    changed = house.with_changes(Supposed(None, done).touches(house)[1])
    assert [name for name in changed.parts if name not in house.parts] == [
        "street-meter",
        "street-check_valve",
        "meter-valve",
        "street-meter-valve",
    ]


def test_scenario_comes_first_and_only_where_there_is_one_of_the_name() -> None:
    text = layout(HOUSE) + (
        "scenarios: {repair: {change: [{insert: {part: new, kind: meter, between: [meter, tee]}}]}}\n"
    )
    house = plumbnet.read_bytes(text.encode())
    scenario, changes = Supposed("repair", (SetEach("meter", {"check": True}),)).touches(house)
    assert scenario == "repair"
    assert [change.set.part for change in changes if change.set] == ["meter", "new"]
    assert Supposed("other").touches(house) == (None, ())


@pytest.mark.parametrize(
    ("done", "words"),
    [
        (SetEach("metre", {"check": True}), ['unknown kind "metre": did you mean "meter"?']),
        (SetEach("meter", {"chek": True}), ['a meter has no field "chek": did you mean "check"?']),
        (SetEach("meter", {"check": "dual"}), ['check: write true or false, not "dual"']),
        (SetEach("main", {"pressure": None}), ["a main cannot be without pressure; give it a value"]),
        (SetEach("main", {"pressure": "60 ft"}), None),
        (SetEach("main", {"temperature": None}), []),
        (SetEach("meter", {"kind": "vale"}), ['unknown kind "vale": did you mean "valve"?']),
        (SetEach("meter", {"kind": None}), None),
        (FitEach("main", "chek_valve", {}), ['unknown kind "chek_valve": did you mean "check_valve"?']),
        (FitEach("main", "pressure_reducer", {}), None),
        (FitEach("main", "vent", {}), ["a vent cannot stand in a pipe, for it has no inlet and outlet of its own"]),
        (FitEach("expansion_tank", "meter", {}), None),
        (FitEach("main", "meter", {"check": True}), []),
    ],
)
def test_what_can_be_done_in_no_layout_is_told_before_there_is_one(
    done: SetEach | FitEach, words: list[str] | None
) -> None:
    assert said(done) == words if words is not None else len(said(done)) == 1


def test_what_one_layout_refuses_is_raised() -> None:
    house = system(HOUSE, heater=INSIDE)
    with pytest.raises(ChangeError, match="elevation"):
        Supposed(None, (SetEach("relief_valve", {"elevation": "3 ft"}),)).touches(house)


def test_nothing_supposed_is_false() -> None:
    assert not Supposed()
    assert Supposed("repair")
    assert Supposed(None, (FitEach("main", "meter", {}),))


@pytest.mark.parametrize(
    "done", [SetEach("meter", {"check": True, "rating": None}), FitEach("main", "check_valve", {"opens": "1 psi"})]
)
def test_what_is_written_down_is_read_back(done: ToEach) -> None:
    assert to_each_of(json.loads(json.dumps(done.fields()))) == done


def test_scenario_that_cannot_be_made_says_why_and_one_that_builds_on_another_has_its_changes() -> None:
    bad, more = "bad: {change: [{close: x}]}", "more: {after: shut, change: [{draw: tap}]}"
    scenarios = f"\nscenarios:\n  shut: {{change: [{{close: valve}}]}}\n  {bad}\n  {more}\n"
    found = plumbnet.read_bytes((layout("street -> valve -> heater -> tap.hot") + scenarios).encode(), file="f.yaml")
    with pytest.raises(ChangeError, match='no part is called "x"'):
        Supposed("bad").touches(found)
    assert Supposed("more").touches(found) == ("more", ())
