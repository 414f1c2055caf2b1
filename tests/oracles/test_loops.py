from collections import Counter

import pytest
from conftest import Drawn, times
from hypothesis import assume, given

from oracles.circling_water import CirclingWater
from oracles.random_layouts import Layout, layouts
from oracles.random_returns import zoned
from oracles.standing_water import StandingWater
from plumbnet.layout.model.system import End

EXAMPLES = times(0.5)
ROUND = (
    *("circulator", "circulator", "circulator", "storage_heater", "tankless_heater", "boiler", "indirect_heater"),
    *("check_valve", "check_valve", "mixing_valve", "valve", "storage_tank", "booster_pump", "device"),
)
REDUCED = (*ROUND, "pressure_reducer", "pressure_reducer", "pressure_reducer", "main")


@EXAMPLES
@given(layouts(kinds=ROUND, most=12) | layouts(kinds=REDUCED, most=12))
def test_heaters_in_a_loop_are_those_that_some_way_round_passes(layout: Layout) -> None:
    drawn, oracle = Drawn(layout.system), CirclingWater(layout.system)
    circled = {end for pump in pumps(layout) for end in oracle.circled(pump)}
    expected = {name for name, ends in stores(layout).items() if ends & circled}
    in_loops = {drawn.network.piping.ports[node] for loop in drawn.network.circulation.loops for node in loop.nodes}
    assert {name for name, ends in stores(layout).items() if ends & in_loops} == expected


@EXAMPLES
@given(layouts(kinds=ROUND, most=12) | layouts(kinds=REDUCED, most=12))
def test_idle_pumps_are_those_with_no_way_round(layout: Layout) -> None:
    drawn, oracle = Drawn(layout.system), CirclingWater(layout.system)
    assert set(drawn.network.circulation.idle) == {pump for pump in pumps(layout) if not oracle.circled(pump)}


def test_returns_from_zones_behind_reducers_go_round_where_the_pumps_lift_them() -> None:
    seen: Counter[str] = Counter()

    @EXAMPLES
    @given(zoned())
    def holds(layout: Layout) -> None:
        circulation = Drawn(layout.system).network.circulation
        rounds = CirclingWater(layout.system).rounds()
        assert {frozenset(loop.parts) for loop in circulation.loops} == {one.parts for one in rounds.values()}
        assert set(circulation.idle) == set(pumps(layout)) - set(rounds)
        reducers = {name for name, part in layout.system.parts.items() if part.kind == "pressure_reducer"}
        seen["hindered"] += len(circulation.hindered)
        seen["helped by a head"] += sum(one.head_helps for one in circulation.hindered)
        seen["driven through a reducer"] += any(one.parts & reducers for one in rounds.values())

    holds()
    assert min(seen[word] for word in ("hindered", "helped by a head", "driven through a reducer")) >= 3


@EXAMPLES
@given(zoned())
def test_boosters_of_zones_lift_what_their_return_does_not_lead_back(layout: Layout) -> None:
    drawn, water = Drawn(layout.system), StandingWater(layout.system)
    assume(water.has_one_datum)
    for end in water.ends:
        node = drawn.network.piping.node_of[end]
        stands_pa = drawn.network.standing.at(drawn.network.zoning.zone_of[node])
        assert stands_pa == pytest.approx(water.static_pa[end], abs=1e-3), end


def pumps(layout: Layout) -> list[str]:
    return [name for name, part in layout.system.parts.items() if part.driven() is not None]


def stores(layout: Layout) -> dict[str, set[End]]:
    """The two ports of every heat source's store."""
    return {
        name: {End(name, source.inlet), End(name, source.outlet)}
        for name, part in layout.system.parts.items()
        if (source := part.heat()) is not None
    }
