import numpy as np
import pytest
import rustworkx as rx
from conftest import Drawn, times
from hypothesis import assume, given
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from oracles.random_layouts import ALL, Layout, layouts
from oracles.standing_water import DRY, StandingWater, standing_water
from oracles.walking import Sense
from oracles.ways_out import opening_pressures
from plumbnet.layout.model.system import End

EXAMPLES = times(0.4)
CLOSE_PA = 1e-3  # sums of the same few pressures in another order


@EXAMPLES
@given(layouts())
def test_zones_are_what_free_passages_join(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    number = {end: index for index, end in enumerate(water.ends)}
    free = [(number[step.start], number[step.end]) for step in water.steps if step.sense is Sense.FREE]
    rows, columns = np.array(free).T
    joined = coo_array((np.ones(len(free)), (rows, columns)), shape=(len(number), len(number)))
    count, labels = connected_components(joined, directed=False)
    zone_of = drawn.network.zoning.zone_of
    pairs = {(labels[number[end]], zone_of[drawn.network.piping.node_of[end]]) for end in water.ends}
    assert len(pairs) == count == drawn.network.zoning.zone_count


@EXAMPLES
@given(layouts())
def test_static_pressure_is_the_best_of_all_ways_from_the_supplies(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    for end in water.ends:
        assert static_pa(drawn, end) == pytest.approx(water.static_pa[end], abs=CLOSE_PA), end


@EXAMPLES
@given(layouts(kinds=(*ALL, "main", "main", "well")))
def test_usual_least_and_cut_in_pressures_are_the_best_of_all_ways_too(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    standing = drawn.network.standing
    for known, gives_pa in (
        (standing.usual_pa, lambda source: source.pressure_pa if source.usual_pa is None else source.usual_pa),
        (standing.least_pa, lambda source: source.cut_in_pa if source.least_pa is None else source.least_pa),
        (standing.cut_in_pa, lambda source: source.cut_in_pa),
    ):
        for end, own_pa in water.own_pa(gives_pa).items():
            at_datum_pa = known[zone(drawn, end)]
            found_pa = DRY if at_datum_pa is None else at_datum_pa - head_pa(drawn, end)
            assert found_pa == pytest.approx(own_pa, abs=CLOSE_PA), end


@EXAMPLES
@given(layouts())
def test_water_cut_off_is_water_that_only_a_shut_valve_joins_to_a_supply(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    cut_off = {end for end in water.ends if zone(drawn, end) in drawn.network.standing.cut_off}
    assert cut_off == water.cut_off
    assert cut_off.isdisjoint(fed(water, over_shut_valves=False))


@EXAMPLES
@given(layouts())
def test_water_is_wherever_a_supply_reaches(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    wet = {end for end in water.ends if static_pa(drawn, end) > DRY}
    assert wet == fed(water, over_shut_valves=True)


@EXAMPLES
@given(layouts())
def test_ladder_is_the_lowest_way_to_every_outlet(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    for end in starts(layout):
        lowest = opening_pressures(water, end)
        way_out_pa = min(
            (lowest[s.end] for s in water.sites if s.outlet.role.is_way_out and s.end in lowest), default=np.inf
        )
        ladder = drawn.network.ladder(zone(drawn, end))
        listed = {drawn.network.piping.ports[rung.site.node]: rung.opens_pa for rung in ladder}
        own = {site.end for site in water.sites if zone(drawn, site.end) == zone(drawn, end)}
        below = {outlet for outlet, opens_pa in lowest.items() if opens_pa < way_out_pa}
        assert own | below <= set(listed) <= own | {site for site in lowest if lowest[site] <= way_out_pa}
        assert listed == {outlet: pytest.approx(lowest[outlet], abs=CLOSE_PA) for outlet in listed}
        assert [rung.opens_pa for rung in ladder] == sorted(listed.values())


@EXAMPLES
@given(layouts())
def test_gates_on_the_way_to_a_rung_lead_from_zone_to_zone_below_its_pressure(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), standing_water(layout.system)
    ports = drawn.network.piping.ports
    assume(water.has_one_datum)
    for end in starts(layout):
        for rung in drawn.network.ladder(zone(drawn, end)):
            at = zone(drawn, end)
            for crossing in rung.crossings:
                assert zone(drawn, ports[crossing.leaves]) == at
                steps = [s for s in water.steps_from[ports[crossing.leaves]] if s.end == ports[crossing.enters]]
                assert min(water.floor_pa(step) for step in steps) <= rung.opens_pa
                at = zone(drawn, ports[crossing.enters])
            assert zone(drawn, ports[rung.site.node]) == at


def starts(layout: Layout) -> list[End]:
    """A port of every heater."""
    parts = layout.system.parts.items()
    return [End(name, source.inlet) for name, part in parts if (source := part.heat()) is not None]


def static_pa(drawn: Drawn, end: End) -> float:
    return drawn.network.standing.at(zone(drawn, end))


def zone(drawn: Drawn, end: End) -> int:
    return drawn.network.zoning.zone_of[drawn.network.piping.node_of[end]]


def head_pa(drawn: Drawn, end: End) -> float:
    return drawn.network.piping.heads_pa[drawn.network.piping.node_of[end]]


def fed(water: StandingWater, *, over_shut_valves: bool) -> set[End]:
    """Ports that water from some supply reaches."""
    graph: rx.PyDiGraph = rx.PyDiGraph()
    number = dict(zip(water.ends, graph.add_nodes_from(water.ends), strict=True))
    for step in water.steps:
        if step.is_way or (over_shut_valves and step.sense is Sense.SHUT):
            graph.add_edge(number[step.start], number[step.end], None)
    parts = water.system.parts.items()
    sources = [End(name, source.port) for name, part in parts if (source := part.source()) is not None]
    return {graph[index] for s in sources for index in (number[s], *rx.descendants(graph, number[s]))}
