from drawing_board import Sketch, sketch

from plumbnet.drawing.items.accessory_stacks import without_stacks


def names(house: Sketch) -> list[tuple[str, tuple[str, ...]]]:
    return [(stack.host.part, stack.names) for stack in house.stacks]


def test_tanks_and_relief_valves_stand_on_what_they_are_joined_to() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief")
    assert names(house) == [("tee", ("tank",)), ("heater", ("relief",))]
    assert sorted(without_stacks(house.diagram, house.stacks).items) == ["heater", "street", "tap", "tee"]


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
