from itertools import pairwise

from drawing_board import Sketch, sketch

from plumbnet.drawing.columns.heights import Apart, node_heights

HOUSE = "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee2 -> tap2.hot\ntee1 -> tap1.cold"


def heights_of(house: Sketch, *further: Apart) -> dict[int, float]:
    return node_heights(house.layers, further)


def test_run_without_branches_is_straight() -> None:
    house = sketch("street -> meter -> valve -> cv -> heater -> tap.hot")
    found = heights_of(house)
    level = [found[house.graph.pieces[name][0]] for name in ("street", "meter", "valve", "cv")]
    assert max(level) - min(level) < 0.1


def test_rooms_of_neighbours_never_touch() -> None:
    house = sketch(HOUSE)
    found = heights_of(house)
    for column in house.columns:
        for upper, lower in pairwise(column):
            rooms = [
                house.footprints[node].room if not house.grid.is_waypoint(node) else None for node in (upper, lower)
            ]
            needed = (rooms[0].bottom if rooms[0] else 0.0) + (rooms[1].top if rooms[1] else 0.0)
            assert found[lower] - found[upper] > needed


def test_further_demand_is_kept() -> None:
    house = sketch(HOUSE)
    column = next(column for column in house.columns if len(column) > 1)
    found = heights_of(house, Apart(column[0], column[1], 500.0))
    assert found[column[1]] - found[column[0]] >= 499.9


def test_roof_tank_is_drawn_at_the_top() -> None:
    house = sketch("street -> tee -> cistern -> heater -> tap.hot\ntee -> tap.cold")
    found = heights_of(house)
    stations = {name: found[pieces[0]] for name, pieces in house.graph.pieces.items()}
    top = stations["cistern"] - house.footprint("cistern").room.top
    assert top - min(stations[name] - house.footprint(name).room.top for name in stations) < 3.0
