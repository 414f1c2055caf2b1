from drawing_board import sketch

from plumbnet.drawing.palette import Service


def test_arc_has_a_waypoint_in_every_column_it_passes() -> None:
    house = sketch("street -> tee -> valve -> heater -> tap.hot\ntee -> tap.cold")
    for arc, chain in zip(house.graph.arcs, house.grid.chains, strict=True):
        columns = [house.grid.column_of[node] for node in chain]
        assert columns == list(range(house.grid.column_of[arc.tail], house.grid.column_of[arc.head] + 1))
        assert [house.grid.is_waypoint(node) for node in chain[1:-1]] == [True] * (len(chain) - 2)


def test_hops_are_the_steps_of_all_chains() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> tap.cold")
    assert len(house.grid.hops) == sum(len(chain) - 1 for chain in house.grid.chains)


def test_crossing_a_return_disturbs_less() -> None:
    house = sketch("street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1")
    weights = {house.graph.arcs[hop.arc].service: house.grid.weight(hop) for hop in house.grid.hops}
    assert weights[Service.RETURN] < weights[Service.HOT] == weights[Service.COLD]
