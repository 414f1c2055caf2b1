"""Changes made to a copy of a system: states, values, failures; what is refused and why."""

from collections.abc import Mapping
from copy import deepcopy

import pytest
from conftest import PSI, Drawn, drawn, system

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.kinds.control import ExpansionTank
from plumbnet.layout.model.part import Role
from plumbnet.layout.model.system import System

HOUSE = """street -> meter -> valve -> tee -> heater -> tap.hot
           tee -> tank
           tee -> tap.cold"""
RELIEF = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 200 degF}"


def house(**parts: str) -> System:
    return system(HOUSE, **{"heater": RELIEF, **parts})


def changed(before: System, *changes: Mapping[str, object]) -> System:
    return with_changes(before, [Change.model_validate(change) for change in changes])


def refusal(before: System, *changes: Mapping[str, object]) -> str:
    with pytest.raises(ChangeError) as caught:
        changed(before, *changes)
    return str(caught.value)


def relief_psi(of: System) -> list[float]:
    """Set pressures of the safety relief valves."""
    outlets = (outlet for part in of.parts.values() for outlet in part.outlets())
    return [round(outlet.opens_pa / PSI, 1) for outlet in outlets if outlet.role is Role.SAFETY_RELIEF]


def test_no_change_leaves_the_system_as_it_is() -> None:
    before = house()
    assert with_changes(before, []) == before


@pytest.mark.parametrize(
    "change",
    [
        {"close": "valve"},
        {"remove": "meter"},
        {"insert": {"part": "cv", "kind": "check_valve", "between": ["tee", "heater"]}},
        {"add": {"part": "t2", "kind": "tee", "run": "tee -> t2"}},
        {"set": {"part": "heater", "volume": "80 gal", "relief": {"pressure": "125 psi"}}},
        {"fail": "tank"},
        {"draw": "tap"},
    ],
)
def test_original_stays_untouched(change: dict[str, object]) -> None:
    before = house()
    kept = deepcopy(before)
    assert changed(before, change) != before
    assert before == kept


def test_closed_valve_is_shut_and_opened_again_open() -> None:
    shut = changed(house(), {"close": "valve"})
    assert not shut.parts["valve"].is_valve()
    assert shut.written["valve"] == {"kind": "valve", "state": "shut"}
    again = changed(shut, {"open": "valve"})
    assert again.parts["valve"] == house().parts["valve"]


def test_closing_a_valve_stops_the_water() -> None:
    before = drawn("street -> valve -> tap.hot")
    after = changed(before.system, {"close": "valve"})
    assert before.zone("street") == before.zone("tap.hot")
    assert Drawn(after).zone("street") != Drawn(after).zone("tap.hot")


def test_balancing_valve_is_closed_and_opened_like_any_valve() -> None:
    shut = changed(house(valve="kind: balancing_valve"), {"close": "valve"})
    assert not shut.parts["valve"].is_valve()
    assert changed(shut, {"open": "valve"}).parts["valve"].is_valve()


def test_only_a_valve_is_closed_or_opened() -> None:
    assert refusal(house(), {"close": "meter"}).startswith("meter is a meter; only a valve ")
    assert refusal(house(), {"open": "tank"}).startswith("tank is an expansion_tank; only a valve ")


def test_drawn_fixture_lets_water_into_the_open_air() -> None:
    after = changed(house(), {"draw": "tap"})
    assert {outlet.role for outlet in after.parts["tap"].outlets()} == {Role.AIR}
    assert refusal(house(), {"draw": "valve"}).startswith("valve is a valve; water is drawn ")


def test_set_reads_new_values_in_the_units_of_the_file() -> None:
    parts = b"{m: {kind: main, pressure: 400}, s: {kind: softener, volume: 10}}"
    text = b"plumbnet: 1\nunits: metric\nparts: %s\nruns: [m -> s]" % parts
    after = changed(
        read_system(text, file="f"), {"set": {"part": "s", "volume": 20}}, {"set": {"part": "m", "pressure": "3 bar"}}
    )
    assert list(after.parts["s"].contents()) == [("out", 0.020)]
    assert [outlet.opens_pa for outlet in after.parts["m"].outlets()] == pytest.approx([300_000])


def test_set_keeps_the_values_it_does_not_name() -> None:
    after = changed(house(), {"set": {"part": "heater", "volume": "80 gal"}})
    heat = after.parts["heater"].heat()
    assert heat is not None
    assert heat.hot_k == pytest.approx(333.15)
    assert heat.volume_m3 == pytest.approx(80 * 0.003785411784)
    assert after.written["heater"]["volume"] == "80 gal"


def test_set_of_a_heater_refits_its_relief() -> None:
    after = changed(house(), {"set": {"part": "heater", "relief": {"pressure": "125 psi"}}})
    assert relief_psi(house()) == [150.0]
    assert relief_psi(after) == [125.0]
    assert [pipe.name for pipe in after.pipes].count("heater -> heater/relief") == 1


def test_set_can_take_the_relief_out_of_a_heater_and_put_it_back() -> None:
    without = changed(house(), {"set": {"part": "heater", "relief": None}})
    assert relief_psi(without) == []
    assert "heater/relief" not in {end.part for pipe in without.pipes for end in pipe.ends}
    again = changed(without, {"set": {"part": "heater", "relief": {"pressure": "100 psi"}}})
    assert relief_psi(again) == [100.0]


def test_relief_that_is_plugged_or_gone_stays_so_when_the_heater_changes() -> None:
    bigger = {"set": {"part": "heater", "volume": "80 gal"}}
    assert relief_psi(changed(house(), {"fail": "heater/relief"}, bigger)) == []
    assert relief_psi(changed(house(), {"remove": "heater/relief"}, bigger)) == []
    assert relief_psi(changed(house(), bigger)) == [150.0]


def test_set_exchanges_a_part_for_one_of_another_kind() -> None:
    after = changed(
        house(meter="kind: meter, check: true, elevation: 5 ft"), {"set": {"part": "meter", "kind": "valve"}}
    )
    assert after.parts["meter"].kind == "valve"
    assert after.parts["meter"].elevation_m == pytest.approx(1.524)
    assert after.written["meter"] == {"kind": "valve", "elevation": "5 ft"}


def test_set_does_not_take_away_a_port_that_has_a_pipe() -> None:
    as_main = refusal(house(), {"set": {"part": "meter", "kind": "main", "pressure": "60 psi"}})
    assert as_main.startswith('meter would be a main, which has no port "in" ')
    as_valve = refusal(house(), {"set": {"part": "tee", "kind": "valve"}})
    assert as_valve.startswith('tee would be a valve, which has no port "joint" ')


def test_set_tells_every_mistake_at_once() -> None:
    said = refusal(house(), {"set": {"part": "tank", "volume": "3 psi", "colour": 1}})
    assert 'no field "colour"; ' in said
    assert '; volume: "3 psi" is a pressure; ' in said


def test_set_of_what_is_written_inside_a_heater_points_there() -> None:
    said = refusal(house(), {"set": {"part": "heater/relief", "pressure": "100 psi"}})
    assert said.startswith("heater/relief is written inside heater")


def test_failure_is_named_or_the_only_one() -> None:
    for written in ("tank", {"part": "tank", "how": "waterlogged"}):
        after = changed(house(), {"fail": written})
        assert list(after.parts["tank"].outlets()) == []
        assert after.written["tank"]["state"] == "waterlogged"


def test_relief_inside_a_heater_can_fail() -> None:
    assert relief_psi(changed(house(), {"fail": "heater/relief"})) == []


def test_failure_that_cannot_be_is_refused() -> None:
    assert refusal(house(), {"fail": "valve"}).startswith("valve, a valve, has no failure")
    burst = refusal(house(), {"fail": {"part": "tank", "how": "burst"}})
    assert 'cannot fail as "burst"' in burst
    assert burst.endswith("; write how: waterlogged")


def test_failure_must_be_named_where_there_are_several(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        ExpansionTank, "failures", {"waterlogged": {"state": "waterlogged"}, "flat": {"precharge_pa": 0.0}}
    )
    said = refusal(house(), {"fail": "tank"})
    assert said == "tank, an expansion_tank, can fail in several ways; write how: waterlogged, flat"
    assert changed(house(), {"fail": {"part": "tank", "how": "flat"}}).parts["tank"].cushion() is not None


def test_changes_are_made_in_order() -> None:
    after = changed(
        house(),
        {"add": {"part": "spare", "kind": "valve", "run": "tee -> spare"}},
        {"close": "spare"},
        {"remove": "spare"},
    )
    assert set(after.parts) == set(house().parts)


def test_refusal_knows_the_change_and_the_field_it_is_about() -> None:
    with pytest.raises(ChangeError) as caught:
        changed(house(), {"close": "valve"}, {"set": {"part": "tank", "volume": "3 psi"}})
    assert [mistake.path for mistake in caught.value.mistakes] == [(1, "set", "volume")]


def test_part_that_is_not_there_is_refused_with_the_nearest_name() -> None:
    assert refusal(house(), {"close": "valv"}).endswith(': did you mean "valve"?')
    spaceship = refusal(house(), {"fail": "spaceship"})
    assert '"spaceship"; ' in spaceship
    assert "did you mean" not in spaceship
