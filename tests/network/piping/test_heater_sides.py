from collections.abc import Set as AbstractSet

import pytest
from conftest import Drawn, drawn


def beside(d: Drawn, place: str) -> AbstractSet[str]:
    return d.network.neighbours(d.node(place))


def hot(d: Drawn) -> set[str]:
    return {d.network.piping.ports[node].part for node in d.network.sides.hot}


def hangs_hot(d: Drawn, place: str) -> bool:
    return d.network.sides.hangs_hot(d.node(place))


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


@pytest.mark.parametrize("branch", ["tee2 -> valve -> tank", "tank -> valve -> tee2"])
def test_tank_on_a_hot_pipe_hangs_there_however_its_branch_was_drawn(branch: str) -> None:
    assert hangs_hot(drawn(f"street -> tee1 -> heater -> tee2 -> tap.hot\n{branch}"), "tank")
    assert not hangs_hot(drawn(f"street -> tee2 -> heater -> tee1 -> tap.hot\n{branch}"), "tank")


def test_tank_at_the_outlet_itself_hangs_on_the_hot_side() -> None:
    assert hangs_hot(drawn("street -> heater -> tank"), "tank")


@pytest.mark.parametrize("branch", ["tee2 -> tank", "tank -> tee2"])
def test_pipe_that_brings_hot_water_to_another_heater_is_told_from_other_hot_pipes(branch: str) -> None:
    d = drawn(f"street -> heater1 -> tee1 -> cv -> tee2 -> heater2 -> tap.hot\ntee1 -> tap2.hot\n{branch}")
    assert hangs_hot(d, "tank")
    assert d.network.sides.feeds_hot(d.node("tee2"))
    assert not d.network.sides.feeds_hot(d.node("tap2.hot"))
    assert not d.network.sides.feeds_hot(d.node("heater1.cold"))


@pytest.mark.parametrize("branch", ["tee3 -> tank", "tank -> tee3"])
def test_tank_on_the_return_of_a_circulation_hangs_in_the_heaters_own_hot_water(branch: str) -> None:
    d = drawn(f"street -> cv -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> tee3 -> pump -> tee1\n{branch}")
    assert hangs_hot(d, "tank")
    assert not d.network.sides.feeds_hot(d.node("tee1"))


def test_branch_that_leads_round_in_a_ring_ends_the_search() -> None:
    assert not hangs_hot(drawn("street -> heater -> tap.hot\ntee1 -> tee2 -> tee3 -> tee1\ntee3 -> tank"), "tank")
