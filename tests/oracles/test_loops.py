from conftest import Drawn, times
from hypothesis import given

from oracles.circling_water import CirclingWater
from oracles.random_layouts import Layout, layouts
from plumbnet.layout.system import End

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


def pumps(layout: Layout) -> list[str]:
    return [name for name, part in layout.system.parts.items() if part.driven() is not None]


def stores(layout: Layout) -> dict[str, set[End]]:
    """The two ports of every heat source's store."""
    return {
        name: {End(name, source.inlet), End(name, source.outlet)}
        for name, part in layout.system.parts.items()
        if (source := part.heat()) is not None
    }
