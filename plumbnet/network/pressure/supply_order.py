"""Zones in the order in which water comes to them, and the circles in which a booster feeds its own inlet."""

import math
from collections.abc import Iterable, Iterator, Sequence
from collections.abc import Set as AbstractSet

import networkx as nx

from plumbnet.network.graphs import dominators, spans
from plumbnet.network.piping import Crossing, Gate, Zone, Zoning

_SUPPLIES: Zone = -1
"""A zone before all supplies."""


def ranks_of(zoning: Zoning, held: AbstractSet[Gate] = frozenset()) -> list[int]:
    """Zones numbered downstream, those in one circle alike; no circle leads through the gates that are `held` shut.

    A booster that feeds its own inlet drives a circle and lifts nothing; any other raises the pressure from
    one rank to a higher one, so that zones taken rank by rank are each settled once.
    """
    if not any(gate.rise_pa for gate in zoning.piping.gates):
        return [0] * zoning.zone_count
    graph: nx.DiGraph[Zone] = nx.DiGraph()
    graph.add_nodes_from(range(zoning.zone_count))
    graph.add_edges_from((one.near, one.far) for one in _forward(zoning) if one.gate not in held)
    circles = nx.condensation(graph)
    ranks = [0] * zoning.zone_count
    for rank, circle in enumerate(nx.topological_sort(circles)):
        for zone in circles.nodes[circle]["members"]:
            ranks[zone] = rank
    return ranks


def circling(zoning: Zoning, ranks: Sequence[int]) -> Iterator[Gate]:
    """The boosters that feed their own inlet, whether or not by free passages."""
    for gate in zoning.piping.gates:
        if gate.rise_pa and ranks[zoning.zone_of[gate.start]] == ranks[zoning.zone_of[gate.end]]:
            yield gate


def held_shut(
    zoning: Zoning, ranks: Sequence[int], static_pa: Sequence[float | None], supplied: Iterable[Zone]
) -> frozenset[Gate]:
    """Reducers in a circle with a booster that nothing opens: their set or more stands behind them without them.

    More than its set comes by no reducer; the set itself comes otherwise where all water that comes to the reducer from
    the zones that are `supplied` has come from behind it. Linear but for a logarithm.
    """
    circles = {ranks[zoning.zone_of[gate.start]] for gate in circling(zoning, ranks)}
    met = [one for one in _forward(zoning) if ranks[one.near] == ranks[one.far] and ranks[one.far] in circles]
    above = frozenset(one.gate for one in met if _over_set_pa(one, static_pa) > 0.0)
    level = [one for one in met if _over_set_pa(one, static_pa) == 0.0]
    return above | frozenset(_from_behind(zoning, level, supplied)) if level else above


def _over_set_pa(crossing: Crossing, static_pa: Sequence[float | None]) -> float:
    """By how much more than its set stands behind a reducer."""
    behind_pa = static_pa[crossing.far]
    return -math.inf if behind_pa is None or crossing.way is None else behind_pa - crossing.way.below_pa


def _from_behind(zoning: Zoning, reducers: Iterable[Crossing], supplied: Iterable[Zone]) -> Iterator[Gate]:
    """Those to which water comes only by way of the zone behind them."""
    onward: dict[Zone, list[Zone]] = {_SUPPLIES: sorted(set(supplied))}
    for one in _forward(zoning):
        onward.setdefault(one.near, []).append(one.far)
    span = spans(dominators(onward, _SUPPLIES))
    for one in reducers:
        if one.near in span and span[one.far][0] <= span[one.near][0] < span[one.far][1]:
            yield one.gate


def _forward(zoning: Zoning) -> Iterator[Crossing]:
    """Gates in the direction in which water is supplied."""
    return (one for one in zoning.crossings() if one.way is not None and one.is_forward)
