from drawing_board import sketch

from plumbnet.drawing.ink.spots import Occupancy, joint_names, tag_spot, taken
from plumbnet.drawing.items.schematic import Shading


def test_best_spot_covers_nothing_if_there_is_one() -> None:
    occupancy = Occupancy([(0, 0, 10, 10)])
    assert occupancy.best([(5, 5, 15, 15), (20, 0, 30, 10)]) == ((20, 0, 30, 10), 0.0)
    assert occupancy.best([(5, 5, 15, 15), (8, 8, 18, 18)]) == ((8, 8, 18, 18), 4.0)


def test_taken_spot_is_not_given_twice() -> None:
    occupancy = Occupancy([])
    spots = [(0.0, 0.0, 10.0, 10.0), (20.0, 0.0, 30.0, 10.0)]
    first, _ = occupancy.best(spots)
    occupancy.take(first)
    assert occupancy.best(spots)[0] == spots[1]


def test_names_of_tees_cover_neither_pipes_nor_symbols_nor_each_other() -> None:
    house = sketch(
        "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee2 -> tap2.hot\ntee1 -> tap1.cold\ntee1 -> tap2.cold"
    )
    occupancy = Occupancy(taken(house.arrangement))
    names = dict(joint_names(house.arrangement, occupancy))
    assert set(names) == {"tee1", "tee2"}
    for box in names.values():
        assert Occupancy(taken(house.arrangement)).covered(box) == 0.0


def test_tag_stands_at_the_edge_of_its_area_and_over_nothing_taken() -> None:
    area = [(0.0, 0.0, 200.0, 100.0)]
    left, top, right, bottom = tag_spot(
        Shading("trapped", "TRAPPED: heater", frozenset()), area, Occupancy([(0.0, -30.0, 200.0, 0.0)])
    )
    assert top >= 100.0
    assert right - left > bottom - top > 0
