"""Groups written as one part: "safety_group" (EN 1487), "inlet_group" (British practice), "closely_spaced_tees"."""

from collections.abc import Mapping

import pytest

import plumbnet
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.edits.inverse import inverse
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError

# street -- group -- cylinder -- tap
FRENCH = """\
plumbnet: 1
units: metric
rules: en-806
parts:
  street: {kind: main, pressure: 3 bar}
  group: {kind: safety_group, set: 7 bar}
  cylinder: {kind: storage_heater, volume: 200 L, setpoint: 65 degC}
  tap: fixture
runs:
  - street -> group -> cylinder -> tap.hot
"""
# street -- group -- cylinder with a combined valve -- tap
#             `-- vessel
BRITISH = """\
plumbnet: 1
units: metric
rules: uk-2010
parts:
  street: {kind: main, pressure: 5 bar}
  group: {kind: inlet_group, set: 3.5 bar, expansion_relief: 6 bar}
  vessel: {kind: expansion_tank, volume: 24 L, precharge: 3.5 bar}
  cylinder:
    {kind: storage_heater, volume: 210 L, setpoint: 60 degC, relief: {pressure: 7 bar, temperature: 95 degC}}
  tap: fixture
runs:
  - street -> group -> cylinder -> tap.hot
  - group.vessel -> vessel
  - group.cold -> tap.cold
"""


def read(text: str) -> System:
    return read_system(text.encode(), file="house.yaml")


def changed(text: str, *changes: Mapping[str, object]) -> System:
    return read(text).with_changes([Change.model_validate(change) for change in changes])


def answer(drawn: System) -> tuple[str, list[str]]:
    report = plumbnet.check(drawn)
    (heater,) = report.heaters
    return heater.verdict.value, [one.name for one in report.findings if one.severity == "error"]


def test_usual_french_cylinder_is_controlled_by_its_group_without_an_error() -> None:
    report = plumbnet.check(read(FRENCH))
    (heater,) = report.heaters
    assert answer(read(FRENCH)) == ("controlled", [])
    assert heater.relieved_by == ("group/relief",)
    assert [(rung.outlet, rung.role.value) for rung in heater.ladder] == [("group/relief", "expansion relief")]
    assert (round(heater.limit_pa), heater.limit_by) == (700_000, "set of group/relief")
    assert heater.settled_pa == pytest.approx(700_000)
    assert heater.stopped_by.sets == (("group/check",),)


def test_usual_british_cylinder_is_controlled_by_its_vessel_without_an_error() -> None:
    (heater,) = plumbnet.check(read(BRITISH)).heaters
    assert answer(read(BRITISH)) == ("controlled", [])
    assert [rung.outlet for rung in heater.ladder] == ["vessel", "group/expansion-relief", "cylinder/relief"]
    assert heater.static_pa == pytest.approx(350_000)


@pytest.mark.parametrize(
    ("text", "changes", "verdict", "errors"),
    [
        (FRENCH, [{"close": "group/valve"}], "controlled", []),
        (FRENCH, [{"fail": "group/relief"}], "sealed", ["relief-missing", "sealed-heater"]),
        (FRENCH, [{"fail": "group/check"}], "open", ["check-missing-at-heater"]),
        (FRENCH, [{"set": {"part": "street", "pressure": "4.9 bar"}}], "controlled", []),
        (FRENCH, [{"set": {"part": "group/relief", "pressure": "6 bar"}}], "controlled", []),
        (BRITISH, [{"fail": "vessel"}, {"fail": "group/expansion-relief"}], "trapped", ["trapped-expansion"]),
        (BRITISH, [{"remove": "group/check"}], "controlled", ["check-missing-at-heater"]),
        (BRITISH, [{"set": {"part": "cylinder", "relief": None}}], "controlled", ["relief-missing"]),
    ],
)
def test_common_faults_are_told_by_the_parts_inside(
    text: str, changes: list[Mapping[str, object]], verdict: str, errors: list[str]
) -> None:
    told, found = answer(changed(text, *changes))
    assert told == verdict
    assert {*errors} == {*found} - {"tank-waterlogged"}


def test_supply_that_stands_above_the_share_of_the_groups_set_is_told() -> None:
    report = plumbnet.check(changed(FRENCH, {"set": {"part": "street", "pressure": "6 bar"}}))
    (near,) = (one for one in report.findings if one.name == "relief-near-static")
    assert near.text == "600 kPa stands at group/relief, which is set to 700 kPa."
    assert near.line == 6


def test_where_a_code_asks_for_temperature_relief_a_group_alone_is_not_enough() -> None:
    report = plumbnet.check(read(FRENCH.replace("rules: en-806\n", "rules: uk-2010\n")))
    (missing,) = (one for one in report.findings if one.name == "temperature-relief-missing")
    assert missing.text == "cylinder has no temperature relief: group/relief relieves pressure only."


def test_combined_valve_set_as_low_as_the_group_lifts_with_it() -> None:
    text = FRENCH.replace("setpoint: 65 degC}", "setpoint: 65 degC, relief: {pressure: 7 bar, temperature: 95 degC}}")
    assert answer(read(text))[0] == "trapped"


def test_group_may_be_inserted_and_taken_out_again() -> None:
    plain = FRENCH.replace("  group: {kind: safety_group, set: 7 bar}\n", "").replace("group -> ", "")
    insert = Change.model_validate(
        {"insert": {"part": "group", "kind": "safety_group", "set": "7 bar", "between": ["street", "cylinder"]}}
    )
    drawn = read(plain)
    assert answer(drawn.with_changes([insert])) == ("controlled", [])
    undone = inverse(drawn, insert).changes
    assert undone == (Change(remove="group"),)
    assert list(drawn.with_changes([insert, *undone]).parts) == list(drawn.parts)


def test_part_may_be_inserted_behind_a_group_and_joined_to_its_ports() -> None:
    stop = {"insert": {"part": "stop", "kind": "valve", "between": ["group", "cylinder"]}}
    stopped = changed(FRENCH, stop, {"close": "stop"})
    assert answer(stopped)[0] == "sealed"
    tank = {"part": "tank", "kind": "expansion_tank", "volume": "18 L", "precharge": "3 bar"}
    held = changed(FRENCH, {"add": {**tank, "run": "group.out -> tank"}})
    (heater,) = plumbnet.check(held).heaters
    assert heater.settled_pa is not None
    assert heater.settled_pa < 700_000


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"close": "group"}, "group stands for group/valve, group/check, group/branch and group/relief"),
        ({"set": {"part": "group", "set": "6 bar"}}, "group stands for group/valve, group/check"),
        (
            {"set": {"part": "street", "kind": "safety_group", "set": "6 bar"}},
            "a safety_group opens into parts of its own, and street is one",
        ),
        ({"insert": {"part": "group", "kind": "valve", "between": ["street", "group"]}}, "group is there already"),
    ],
)
def test_change_to_a_group_as_a_whole_says_what_it_stands_for(change: Mapping[str, object], told: str) -> None:
    with pytest.raises(ChangeError, match=told):
        changed(FRENCH, change)


def test_port_of_a_group_whose_part_was_taken_out_is_refused() -> None:
    main = {"part": "other", "kind": "main", "pressure": "3 bar", "run": "other -> group.in"}
    with pytest.raises(ChangeError, match='no part is called "group/valve"'):
        changed(FRENCH, {"remove": "group/valve"}, {"add": main})


def test_port_of_a_group_that_has_its_pipe_is_told_with_both_lines() -> None:
    with pytest.raises(LayoutError) as refused:
        read(FRENCH + "  - street -> group.in\n")
    assert "house.yaml:11:15: group/valve.in already has its pipe, from line 10; join pipes in a tee" in str(
        refused.value
    )


def test_scenario_may_name_the_parts_inside() -> None:
    drawn = read(FRENCH + "scenarios:\n  shut: {change: [{close: group/valve}]}\n")
    assert list(drawn.scenarios) == ["shut"]


#  street -- fill -- back -- boiler -- primary -- tees -- back
#                                                 |  |
#                                   secondary -- rad  (from supply to return)
PRIMARY_SECONDARY = """\
plumbnet: 1
units: metric
rules: en-12828
parts:
  street: {kind: main, pressure: 3 bar}
  fill: {kind: filling_loop, fill: 1.5 bar}
  back: tee
  boiler: {kind: boiler, volume: 10 L, setpoint: 70 degC, relief: {pressure: 3 bar}}
  tees: closely_spaced_tees
  primary: circulator
  secondary: circulator
  rad: {kind: emitter, volume: 40 L}
runs:
  - street -> fill -> back -> boiler -> primary -> tees -> back
  - tees.supply -> secondary -> rad -> tees.return
"""


def test_closely_spaced_tees_join_the_water_of_primary_and_secondary() -> None:
    drawn = read(PRIMARY_SECONDARY)
    assert [name for name in drawn.parts if name.startswith("tees/")] == ["tees/take-off", "tees/return"]
    (boiler,) = plumbnet.check(drawn).heaters
    assert round(boiler.heated_volume_m3 * 1000) == 50


def test_secondary_behind_closely_spaced_tees_counts_as_heated_whichever_pump_runs() -> None:
    (boiler,) = plumbnet.check(changed(PRIMARY_SECONDARY, {"set": {"part": "secondary", "running": False}})).heaters
    assert round(boiler.heated_volume_m3 * 1000) == 50
    (still,) = plumbnet.check(changed(PRIMARY_SECONDARY, {"set": {"part": "primary", "running": False}})).heaters
    assert round(still.heated_volume_m3 * 1000) == 50
