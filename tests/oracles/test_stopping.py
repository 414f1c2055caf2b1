from collections.abc import Iterator

from conftest import Drawn, times
from hypothesis import assume, given
from hypothesis import strategies as st

from oracles.random_layouts import ALL, Layout, layouts
from oracles.standing_water import StandingWater, standing_water
from oracles.ways_out import closing_valves, fewest_devices, ports_open_without_accident
from plumbnet.layout.model.system import End
from plumbnet.network.outlets.crossover import open_without_accident

EXAMPLES = times(0.4)
SINGLE_GATES = tuple(kind for kind in ALL if kind != "device")
BOUNDS_PA = st.permutations([250e3, 400e3, 550e3, 700e3])
"""In any order, since what was searched for one bound is kept for others."""


@EXAMPLES
@given(layouts(kinds=SINGLE_GATES), BOUNDS_PA)
def test_what_stops_it_is_every_smallest_set_of_devices_on_any_way(layout: Layout, bounds_pa: list[float]) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    assume(water.has_one_datum)
    for end, bound in heated(layout, water, bounds_pa):
        node = drawn.network.piping.node_of[end]
        stops = drawn.network.stops(drawn.network.zoning.zone_of[node], bound)
        expected = fewest_devices(water, end, bound)
        assert {frozenset(devices) for devices in stops.sets} <= expected
        assert len(stops.sets) == min(16, len(expected))
        assert len(stops.sets) + stops.more == len(expected)


@EXAMPLES
@given(layouts(), BOUNDS_PA)
def test_valves_that_close_it_are_those_that_leave_no_way_when_shut(layout: Layout, bounds_pa: list[float]) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    assume(water.has_one_datum)
    for end, bound in heated(layout, water, bounds_pa[:2]):
        closings = drawn.network.closings(drawn.network.piping.node_of[end], bound)
        assert closings.complete
        assert list(closings.sets) == closing_valves(water, end, bound)


@EXAMPLES
@given(layouts(), BOUNDS_PA)
def test_open_without_accident_is_open_with_every_such_joint_taken_away(layout: Layout, bounds_pa: list[float]) -> None:
    network, water = Drawn(layout.system).network, standing_water(layout.system)
    assume(water.has_one_datum)
    cells = open_without_accident(network.zoning, network.standing, network.openings, bounds_pa[0])
    expected = ports_open_without_accident(water, bounds_pa[0])
    assert {end for end in water.ends if network.zoning.cell_of[network.piping.node_of[end]] in cells} == expected


def heated(layout: Layout, water: StandingWater, bounds_pa: list[float]) -> Iterator[tuple[End, float]]:
    """A port of every heater, with each bound, or its static pressure where that is higher."""
    for name, part in layout.system.parts.items():
        source = part.heat()
        if source is not None:
            end = End(name, source.inlet)
            for bound_pa in bounds_pa:
                yield end, max(bound_pa, water.static_pa[end])
