from collections.abc import Set as AbstractSet

from conftest import Drawn, drawn

from plumbnet.network.piping.heater_sides import hot_side


def beside(d: Drawn, place: str) -> AbstractSet[str]:
    return d.network.neighbours(d.node(place))


def hot(d: Drawn) -> set[str]:
    stores = [(heated.inlet, heated.outlet) for heated in d.network.heated]
    return {d.network.piping.ports[node].part for node in hot_side(d.network.piping, stores)}


def test_neighbours_are_joined_by_pipe_and_fittings_alone() -> None:
    # street - valve - tee1 - heater: the tank at the tee is a neighbour, the street behind the valve is not
    d = drawn("street -> valve -> tee1 -> heater\ntee1 -> tank")
    assert beside(d, "heater.cold") == {"valve", "tank"}


def test_each_connection_has_neighbours_of_its_own() -> None:
    d = drawn("street -> heater -> tap.hot\nheater.relief -> relief")
    assert beside(d, "heater.cold") == {"street"}
    assert beside(d, "heater.hot") == {"tap"}
    assert beside(d, "heater.relief") == {"relief"}


def test_hot_side_runs_from_the_heater_to_the_taps() -> None:
    d = drawn("street -> tee1 -> heater -> tee2 -> tap.hot\ntee1 -> tap2.cold")
    assert hot(d) == {"heater", "tee2", "tap"}


def test_return_of_a_circulation_is_no_hot_side() -> None:
    d = drawn("street -> cv -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1")
    assert "pump" not in hot(d)
    assert "tap" in hot(d)
