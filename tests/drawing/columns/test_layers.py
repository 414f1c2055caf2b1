from drawing_board import sketch

HOUSE = "street -> tee1 -> heater -> tee2 -> tap.hot\ntee1 -> tap.cold\ntee1 -> tank"


def test_every_node_of_the_grid_stands_in_its_column() -> None:
    layers = sketch(HOUSE).layers
    places = {node: number for number, column in enumerate(layers.columns) for node in column}
    assert places == dict(enumerate(layers.grid.column_of))


def test_what_stands_on_a_tee_is_in_no_column() -> None:
    house = sketch(HOUSE)
    assert "tank" not in house.graph.pieces
    assert [mount.stack.names for mount in house.mounts("tee1")] == [("tank",)]


def test_turn_round_a_device_stands_next_to_it() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ncv -> tee\ncv.in -> valve -> tee")
    layers = house.layers
    assert layers.wraps
    for tip, wrap in layers.wraps.items():
        arc = house.graph.arcs[tip.arc]
        station = arc.head if tip.is_head else arc.tail
        column = layers.columns[house.grid.column_of[station]]
        assert abs(column.index(wrap) - column.index(station)) == 1
