from drawing_board import sketch

from plumbnet.drawing.riser.stacking.movement import moved, moved_points


def test_everything_moves_by_as_much() -> None:
    house = sketch("street -> valve -> tee -> heater -> tap.hot\ntee -> tap.cold")
    there = moved(house.arrangement, 10.0, -5.0)
    assert [(one.x - 10.0, one.y + 5.0) for one in there.placements] == [
        (one.x, one.y) for one in house.arrangement.placements
    ]
    assert there.routes[0].whole == moved_points(house.arrangement.routes[0].whole, 10.0, -5.0)
    assert there.junctions[0].dots == moved_points(house.arrangement.junctions[0].dots, 10.0, -5.0)
