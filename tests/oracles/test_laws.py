from dataclasses import replace
from itertools import pairwise
from random import Random

from conftest import Drawn, times
from hypothesis import assume, given
from hypothesis import strategies as st

from oracles.random_layouts import ALL, Layout, layouts
from oracles.ways_out import without
from plumbnet.layout.model.system import Pipe, System

EXAMPLES = times(0.4)
LIMIT_PA = 550e3
LIFTS = {"main", "well", "open_tank", "filling_loop", "booster_pump", "pressure_reducer"}
ONE_PRESSURE = tuple(kind for kind in ALL if kind not in LIFTS | {"device"})
"""Kinds that leave all water at the one pressure of the main.

Where two supplies meet or a reducer parts two pressures the laws do not hold, and should not: a check taken
out may let the higher pressure in and hold shut what was open.
"""


@EXAMPLES
@given(layouts(), st.randoms(use_true_random=False))
def test_order_of_the_file_changes_no_answer(layout: Layout, chance: Random) -> None:
    names, pipes = list(layout.parts), list(layout.pipes)
    chance.shuffle(names)
    chance.shuffle(pipes)
    shuffled = Layout({name: layout.parts[name] for name in names}, tuple(pipes))
    assert answers(shuffled.system) == answers(layout.system)


@EXAMPLES
@given(layouts(), st.integers(0, 99))
def test_pipe_laid_twice_changes_no_pressure_and_no_way(layout: Layout, choice: int) -> None:
    system = layout.system
    twin = replace(system, pipes=(*system.pipes, system.pipes[choice % len(system.pipes)]))
    assert answers(twin, with_loops=False) == answers(system, with_loops=False)


@EXAMPLES
@given(layouts(kinds=ONE_PRESSURE), st.integers(0, 99))
def test_one_way_device_taken_out_closes_no_way(layout: Layout, choice: int) -> None:
    system = one_pressure(layout)
    checks = [name for name, part in system.parts.items() if part.is_check]
    assume(checks)
    assert open_heaters(system) <= open_heaters(without(system, checks[choice % len(checks)]))


@EXAMPLES
@given(layouts(kinds=ONE_PRESSURE))
def test_pipe_added_closes_no_way(layout: Layout) -> None:
    system = one_pressure(layout)
    tees = [pipe.start for pipe in system.pipes if pipe.start.part.startswith("tee")]
    for one, other in pairwise(sorted(set(tees))):
        joined = replace(system, pipes=(*system.pipes, Pipe(one, other)))
        assert open_heaters(system) <= open_heaters(joined)


def one_pressure(layout: Layout) -> System:
    """The layout with everything at one height and checks that open at once."""
    level = {name: values | {"elevation": 0} for name, values in layout.parts.items()}
    for values in level.values():
        if "opens" in values:
            values["opens"] = 0
    return Layout(level, layout.pipes).system


def open_heaters(system: System) -> set[str]:
    """Heaters under pressure whose water reaches the street or open air at or below the limit or their own pressure."""
    network = Drawn(system).network
    found = set()
    for heated in network.heated:
        zone = network.zoning.zone_of[heated.inlet]
        bound_pa = max(LIMIT_PA, network.standing.at(zone))
        if network.standing.static_pa[zone] is not None and any(
            rung.role.is_way_out and rung.opens_pa <= bound_pa for rung in network.ladder(zone)
        ):
            found.add(heated.name)
    return found


def answers(system: System, *, with_loops: bool = True) -> dict[str, object]:
    """All that the network says of the heaters, by name."""
    network = Drawn(system).network
    found: dict[str, object] = {}
    for heated in network.heated:
        zone = network.zoning.zone_of[heated.inlet]
        bound_pa = max(LIMIT_PA, network.standing.at(zone))
        found[heated.name] = (
            network.standing.static_pa[zone],
            network.standing.cut_in_pa[zone],
            network.standing.cold_k[zone],
            [
                (rung.site.part, rung.opens_pa, [crossing.part for crossing in rung.crossings])
                for rung in network.ladder(zone)
            ],
            network.stops(zone, bound_pa),
            network.closings(heated.inlet, bound_pa),
            network.accidents(heated.inlet, bound_pa),
            with_loops and {frozenset(loop.parts) for loop in heated.loops},
        )
    if with_loops:
        found["idle pumps"] = set(network.circulation.idle)
    return found
