from drawing_board import Sketch, sketch

LADDER = """
street -> tee1 -> heater -> tee2 -> tee3 -> tap3.hot
tee2 -> tap2.hot
tee1 -> tee4 -> tee5 -> tap3.cold
tee4 -> tap2.cold
"""


def place(house: Sketch, name: str) -> int:
    station = house.graph.pieces[name][0]
    return house.columns[house.grid.column_of[station]].index(station)


def test_every_node_stands_once_in_its_column() -> None:
    house = sketch(LADDER)
    for number, column in enumerate(house.columns):
        wanted = [node for node, at in enumerate(house.grid.column_of) if at == number]
        assert sorted(column) == wanted


def test_ladder_of_hot_and_cold_has_no_crossing() -> None:
    house = sketch(LADDER)
    places = {node: at for column in house.columns for at, node in enumerate(column)}
    for one in house.grid.hops:
        for other in house.grid.hops:
            same = house.grid.column_of[one.left] == house.grid.column_of[other.left]
            left, right = places[one.left] - places[other.left], places[one.right] - places[other.right]
            assert not (same and left * right < 0), (one, other)


def test_upper_floor_is_drawn_above_the_lower_one() -> None:
    for up, down in (("tap1", "tap2"), ("tap2", "tap1")):
        runs = "street -> heater -> tee -> valve1 -> tap1.hot\ntee -> valve2 -> tap2.hot\ntee -> heater2"
        house = sketch(runs, **{up: "elevation: 30 ft"})
        assert house.column(up) == house.column(down)
        assert place(house, up) < place(house, down)


def test_order_is_the_same_every_time() -> None:
    assert sketch(LADDER).columns == sketch(LADDER).columns
