from dataclasses import replace

from drawing_board import sketch

from plumbnet.drawing.columns.mounts import FRAME, RING, accessories, mount_room, surround
from plumbnet.drawing.items.item import Diagram


def test_relief_valve_rises_from_the_crown_of_its_heater() -> None:
    house = sketch("street -> heater -> tap.hot\nheater.relief -> relief")
    (mount,) = house.mounts("heater")
    assert mount.rises
    assert mount.foot == (0.0, -house.diagram.items["heater"].symbol.height / 2)
    ((name, (x, y), quarters),) = accessories(house.diagram, mount)
    assert (name, x, quarters) == ("relief", 0.0, 0)
    assert y < mount.foot[1]


def test_valve_below_a_tank_stands_upright_in_its_pipe() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> valve -> tank")
    (mount,) = house.mounts("tee")
    valve, tank = accessories(house.diagram, mount)
    assert valve.quarters % 2 == 1
    assert abs(tank.middle[1]) > abs(valve.middle[1])


def test_check_in_a_stack_points_the_way_it_was_drawn() -> None:
    toward = sketch("street -> tee -> heater -> tap.hot\ntee -> cv -> spill")
    away = sketch("street -> tee -> heater -> tap.hot\nspill -> cv -> tee")
    turns = [accessories(house.diagram, house.mounts("tee")[0])[0].quarters for house in (toward, away)]
    assert sorted(turns) == [1, 3]


def test_room_of_a_stack_holds_its_words() -> None:
    short = sketch("street -> tee -> heater -> tap.hot\ntee -> tank")
    long = sketch("street -> tee -> heater -> tap.hot\ntee -> tank0123456789")
    rooms = [mount_room(house.diagram, house.mounts("tee")[0]) for house in (short, long)]
    assert rooms[1].right > rooms[0].right


def test_two_tanks_on_one_tee_hang_on_its_two_sides_and_three_beside_each_other() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> tank1\ntee -> tank2\ntee -> tank3")
    first, second, third = house.mounts("tee")
    assert first.rises != second.rises
    assert third.rises == first.rises
    assert third.foot[0] > first.foot[0]


def test_ring_and_frame_take_their_room_each() -> None:
    (tank,) = (item for item in sketch("street -> tee -> tank").diagram.items.values() if item.name == "tank")
    rooms = [
        surround(replace(tank, is_ringed=ring, is_framed=frame)) for ring in (False, True) for frame in (False, True)
    ]
    assert rooms == [0.0, FRAME, RING, RING + FRAME]


def test_room_of_a_stack_holds_its_frame() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> tank")
    items = {name: replace(item, is_framed=True) for name, item in house.diagram.items.items()}
    framed = Diagram(items, house.diagram.links)
    (mount,) = house.mounts("tee")
    assert mount_room(framed, mount).right == mount_room(house.diagram, mount).right + FRAME
