from drawing_board import sketch

from plumbnet.report.drawing.words import Free, joint_names, tag_spot, taken


def test_best_spot_covers_nothing_if_there_is_one() -> None:
    free = Free([(0, 0, 10, 10)])
    assert free.best([(5, 5, 15, 15), (20, 0, 30, 10)]) == ((20, 0, 30, 10), 0.0)
    assert free.best([(5, 5, 15, 15), (8, 8, 18, 18)]) == ((8, 8, 18, 18), 4.0)


def test_taken_spot_is_not_given_twice() -> None:
    free = Free([])
    spots = [(0.0, 0.0, 10.0, 10.0), (20.0, 0.0, 30.0, 10.0)]
    first, _ = free.best(spots)
    free.take(first)
    assert free.best(spots)[0] == spots[1]


def test_names_of_tees_cover_neither_pipes_nor_symbols_nor_each_other() -> None:
    house = sketch(
        "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee2 -> tap2.hot\ntee1 -> tap1.cold\ntee1 -> tap2.cold"
    )
    free = Free(taken(house.placed))
    names = dict(joint_names(house.placed, free))
    assert set(names) == {"tee1", "tee2"}
    for box in names.values():
        assert Free(taken(house.placed)).covered(box) == 0.0


def test_tag_stands_at_the_edge_of_its_area_and_over_nothing_taken() -> None:
    area = [(0.0, 0.0, 200.0, 100.0)]
    left, top, right, bottom = tag_spot("TRAPPED: heater", area, Free([(0.0, -30.0, 200.0, 0.0)]))
    assert top >= 100.0
    assert right - left > bottom - top > 0
