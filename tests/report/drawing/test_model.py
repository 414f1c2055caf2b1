import pytest
from drawing_board import Sketch, sketch

from plumbnet.layout.part import KINDS
from plumbnet.report.drawing.model import layered
from plumbnet.report.drawing.symbol import SYMBOLS


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_kind_has_a_symbol_of_its_own_or_a_box_of_its_name(kind: str) -> None:
    assert KINDS[kind].symbol in {*SYMBOLS, kind}
    assert [other for other in KINDS if KINDS[other].symbol == KINDS[kind].symbol] == [kind]


def names(house: Sketch) -> list[tuple[str, tuple[str, ...]]]:
    return [(stack.host.part, stack.names) for stack in house.stacks]


def test_tanks_and_relief_valves_stand_on_what_they_are_joined_to() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief")
    assert names(house) == [("tee", ("tank",)), ("heater", ("relief",))]
    assert sorted(layered(house.model, house.stacks).items) == ["heater", "street", "tap", "tee"]


def test_valve_between_a_tank_and_its_tee_stands_with_it() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> valve -> tank")
    assert names(house) == [("tee", ("valve", "tank"))]


def test_relief_valve_at_the_end_of_a_run_stands_in_line() -> None:
    house = sketch("street -> heater -> relief")
    assert names(house) == []


def test_long_pipe_to_a_tank_is_no_stack() -> None:
    house = sketch("street -> tee1 -> heater -> tap.hot\ntee1 -> valve1 -> valve2 -> cv1 -> tank")
    assert names(house) == []


def test_stack_that_would_leave_its_joint_without_a_pipe_stands_in_line() -> None:
    house = sketch("street -> heater -> tap.hot\ntank1 -> tee -> tank2")
    assert len(names(house)) == 1


def test_open_tank_above_all_it_feeds_is_on_the_roof_and_one_below_is_not() -> None:
    assert sketch("cistern -> heater -> tap.hot").model.items["cistern"].is_on_roof
    low = sketch(
        "cistern -> heater -> tap.hot", tap="elevation: 200 ft", cistern="elevation: 300 ft", heater="elevation: 301 ft"
    )
    assert not low.model.items["cistern"].is_on_roof


def test_symbol_shows_how_a_part_stands() -> None:
    house = sketch(
        "street -> meter -> valve -> prv -> booster -> booster2 -> heater -> tap.hot\ntap.cold -> tank",
        meter="check: true",
        booster2="check: false",
        valve="state: shut",
        prv="bypass: true",
        tank="state: waterlogged",
        tap="crossover: true",
    )
    drawn = {name: item.symbol.name for name, item in house.model.items.items()}
    assert drawn["meter"] == "checked_meter"
    assert drawn["booster"] == "checked_booster_pump"
    assert drawn["booster2"] == "booster_pump"
    assert drawn["valve"] == "shut_valve"
    assert drawn["prv"] == "pressure_reducer_with_bypass"
    assert drawn["tank"] == "waterlogged_tank"
    assert drawn["tap"] == "fixture_with_crossover"
