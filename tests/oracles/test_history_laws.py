"""Laws between two layouts for limits and for how high water comes, over all sorts of layouts, by the public door.

Pressures are those at a heater, None where nothing holds it, which is more than any. Of a heater that warms water in
several zones the worst place is told, which may become another: those are counted and left out.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from math import inf

import networkx as nx
from conftest import Drawn, times
from hypothesis import assume, given
from hypothesis import strategies as st

from oracles.random_buildings import ANY
from oracles.random_layouts import Layout, Values
from oracles.standing_water import standing_water
from oracles.test_metamorphic import CHOICE, by_name, checked, chosen_pipe, inserted, splits, with_change
from oracles.walking import Sense, Walking
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import End, System
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.limit_facts import PlaceFacts

EXAMPLES = times(0.6)
CLOSE_PA, CLOSE = 1.0, 1e-6
BURST_PA = 1e8
"""In a tank that is all but full a pressure may be anything: above a thousand bar it is all one."""


@dataclass
class Tally:
    """What a law was held against, and what was left out, and why."""

    seen: Counter[str] = field(default_factory=Counter)

    def told(self, law: str) -> None:
        print(law, dict(self.seen))  # noqa: T201  shown by pytest -rP in the long run


def paired(before: Report, after: Report, tally: Tally) -> Iterator[tuple[HeaterFacts, HeaterFacts]]:
    """Heaters before and after whose answers stand at one place."""
    now = by_name(after)
    for one in before.heaters:
        if one.stands_at == now[one.name].stands_at:
            yield one, now[one.name]
        else:
            tally.seen["another place is the worst"] += 1


def most_pa(facts: HeaterFacts) -> float:
    """What no history passes."""
    return inf if facts.settled_pa is None or facts.settled_pa > BURST_PA else facts.settled_pa


def least_pa(facts: HeaterFacts) -> float:
    """What a history is known to come to."""
    reached_pa = most_pa(facts) if facts.settled_least_pa is None else facts.settled_least_pa
    return min(reached_pa, most_pa(facts))


def is_below(one: float, other: float) -> bool:
    return one == other or one <= other + CLOSE_PA + CLOSE * abs(other)


def assert_no_higher(lower: HeaterFacts, higher: HeaterFacts, tally: Tally) -> None:
    """Whatever comes of one comes no higher than of the other; bounds count where they are known to be reached."""
    assert is_below(least_pa(lower), most_pa(higher)), (lower.name, lower.settled_pa, higher.settled_pa)
    if is_below(most_pa(lower), least_pa(lower)):
        assert is_below(most_pa(lower), most_pa(higher)), (lower.name, lower.settled_pa, higher.settled_pa)
    else:
        tally.seen["known only as a pair"] += 1
    tally.seen["settled"] += 1
    tally.seen["moved"] += most_pa(lower) < most_pa(higher) - CLOSE_PA


def broken(report: Report) -> dict[tuple[str, str], PlaceFacts]:
    """Every broken place that is told, by what sets its limit."""
    return {(one.part, one.by): one for facts in report.heaters for one in facts.broken}


def statics(system: System) -> dict[End, float]:
    """Static pressure at every port."""
    network = Drawn(system).network
    zone_of = network.zoning.zone_of
    return {
        end: network.standing.at(zone_of[node]) - network.piping.heads_pa[node]
        for end, node in network.piping.node_of.items()
    }


def test_check_in_a_pipe_from_a_heater_to_a_tap_raises_no_limit_by_more_than_it_needs_and_opens_nothing() -> None:
    # A check that keeps a supply off lowers what stands elsewhere, and may so let a way out open; one that also stands
    # against water which went the other way by the same pipe frees the heater of what lies there: counted, left out.
    tally = Tally()

    @times(0.7)
    @given(ANY, CHOICE, st.sampled_from([0, 0, 7, 40]))
    def holds(layout: Layout, choice: int, opens: int) -> None:
        before = checked(layout.system)
        ways = list(pipes_to_taps(before.system))
        assume(ways)
        heater, start, end = ways[choice % len(ways)]
        change = inserted(
            "between", "check_valve", f"{start.part}.{start.port}", end, before.system.parts[start.part].elevation_m
        )
        opening: Values = {"set": {"part": "between", "opens": f"{opens} kPa"}}
        changed = with_change(before.system, change, opening)
        after = checked(changed)
        old, new = statics(before.system), statics(changed)
        if any(new[each] < old[each] - opens * 1e3 - CLOSE_PA for each in old):
            tally.seen["a supply kept off"] += 1
            return
        for one, other in paired(before, after, tally):
            if not pushed_to(before.system, one.name) <= pushed_to(changed, one.name):
                tally.seen["a place barred"] += 1
                continue
            assert is_below(other.limit_pa, one.limit_pa + opens * 1e3), (one.name, one.limit_pa, other.limit_pa)
            tally.seen["limit"] += 1
            tally.seen["limit of the tap still counts"] += one.name == heater and "between" in other.limit_way
            if str(one.verdict) != "open" and one.loops == other.loops:
                assert str(other.verdict) != "open", one.name
                tally.seen["closed"] += 1

    holds()
    tally.told("check to a tap")
    assert tally.seen["limit of the tap still counts"] >= 8
    assert tally.seen["closed"] >= 20


def pushed_to(system: System, heater: str) -> set[End]:
    """Ports to which growth of a heater can push."""
    water, inlet = standing_water(system), End(heater, inlet_of(system, heater))
    graph = water.graph(lambda step: step.sense is Sense.FREE or water.floor_pa(step) < inf)
    return {inlet, *nx.descendants(graph, inlet)}


def inlet_of(system: System, heater: str) -> str:
    heat = system.parts[heater].heat()
    assert heat is not None
    return heat.inlet


def pipes_to_taps(system: System) -> Iterator[tuple[str, End, End]]:
    """Heaters, and ends of pipes in the direction of a way from the heater's outlet to a fixture."""
    graph = Walking(system).graph(lambda step: step.is_supply)
    pipes = {(pipe.start, pipe.end) for pipe in system.pipes if "/" not in pipe.start.part + pipe.end.part}
    taps = [End(name, port) for name, part in system.parts.items() for port in part.draws_at()]
    for name, part in system.parts.items():
        heat = part.heat()
        if heat is None:
            continue
        own = graph.copy()
        own.remove_node(End(name, heat.inlet))
        for tap in taps:
            if own.has_node(tap) and nx.has_path(own, End(name, heat.outlet), tap):
                way = nx.shortest_path(own, End(name, heat.outlet), tap)
                for start, end in pairwise(way):
                    if (start, end) in pipes or (end, start) in pipes:
                        yield name, start, end


def test_larger_tank_raises_no_zone() -> None:
    # The membrane's share of the shell stays: of the same acceptance a larger shell holds more of it cold.
    tally = Tally()

    @EXAMPLES
    @given(ANY, CHOICE, st.sampled_from([1.1, 2.0, 10.0]))
    def holds(layout: Layout, choice: int, larger: float) -> None:
        before = checked(layout.system)
        cushions = {name: cushion for name, part in before.system.parts.items() if (cushion := part.cushion())}
        assume(cushions)
        tank = list(cushions)[choice % len(cushions)]
        cushion = cushions[tank]
        bigger = {"part": tank, "volume": f"{cushion.volume_m3 * larger * 1000!r} L"}
        if cushion.acceptance_m3 is not None:
            bigger["acceptance"] = f"{cushion.acceptance_m3 * larger * 1000!r} L"
        after = checked(with_change(before.system, {"set": bigger}))
        for one, other in paired(before, after, tally):
            assert_no_higher(other, one, tally)
        assert_no_place_higher(before, after, tally)

    holds()
    tally.told("larger tank")
    assert tally.seen["moved"] >= 10
    assert tally.seen["broken place"] >= 5


def assert_no_place_higher(before: Report, after: Report, tally: Tally) -> None:
    """No place that is broken after comes higher than it did, and none breaks that did not."""
    old = broken(before)
    for place, one in broken(after).items():
        if place not in old:
            assert any(
                facts.stands_at != now.stands_at for facts, now in zip(before.heaters, after.heaters, strict=True)
            ), place
            tally.seen["broken place not told before"] += 1
            continue
        assert is_below(min(one.reached_pa, BURST_PA), old[place].highest_pa), place
        if is_below(one.highest_pa, one.reached_pa):
            assert is_below(min(one.highest_pa, BURST_PA), old[place].highest_pa), place
        tally.seen["broken place"] += 1


def test_tap_added_anywhere_raises_no_limit() -> None:
    # Where nothing in reach set a limit the profile's counts at the heater; a tap above it stands lower, and may more.
    tally = Tally()

    @EXAMPLES
    @given(ANY, CHOICE, st.sampled_from([0.0, 0.0, -4.0, 8.0]))
    def holds(layout: Layout, choice: int, height_m: float) -> None:
        before = checked(layout.system)
        pipe = chosen_pipe(before.system, choice)
        tap = {"part": "another", "kind": "fixture", "run": "split -> another.hot", "elevation": f"{height_m} m"}
        after = checked(with_change(before.system, *splits(before.system, pipe, "split"), {"add": tap}))
        for one, other in paired(before, after, tally):
            if not one.limit_at:
                tally.seen["nothing set one"] += 1
                continue
            assert is_below(other.limit_pa, one.limit_pa), (one.name, one.limit_pa, other.limit_pa)
            tally.seen["limit"] += 1
            tally.seen["lowered"] += other.limit_pa < one.limit_pa - CLOSE_PA

    holds()
    tally.told("tap added")
    assert tally.seen["lowered"] >= 5


def test_heater_heated_more_lowers_no_settled_pressure() -> None:
    tally = Tally()

    @EXAMPLES
    @given(ANY, CHOICE, st.integers(1, 40))
    def holds(layout: Layout, choice: int, rise_k: int) -> None:
        before = checked(layout.system)
        facts = before.heaters[choice % len(before.heaters)]
        hotter_c = min(facts.hot_k - 273.15 + rise_k, 98.0)
        assume(hotter_c > facts.hot_k - 273.15)
        after = checked(with_change(before.system, {"set": {"part": facts.name, "setpoint": f"{hotter_c} degC"}}))
        for one, other in paired(before, after, tally):
            assert_no_higher(one, other, tally)

    holds()
    tally.told("heated more")
    assert tally.seen["moved"] >= 5
