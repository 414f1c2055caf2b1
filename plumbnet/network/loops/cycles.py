"""Ways round a pump: the arcs of a loop past which one leads that meets no port twice, each tried."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import NamedTuple

import networkx as nx

from plumbnet.network.piping import Node

Edge = tuple[Node, Node]
"""Two ports that something joins, the lower number first."""


Goes = Callable[[Sequence[Node]], bool]
"""Whether water takes a way from a pump's outlet to its inlet."""


class FlowArc(NamedTuple):
    """A way from port to port: through the pipe of that number, or inside a part where there is none."""

    start: Node
    end: Node
    pipe: int = -1

    @property
    def is_pipe(self) -> bool:
        """Whether it runs through a pipe."""
        return self.pipe >= 0

    @property
    def edge(self) -> Edge:
        """Its ports, whichever way it leads."""
        return _edge(self.start, self.end)


def _edge(one: Node, other: Node) -> Edge:
    return (one, other) if one < other else (other, one)


@dataclass
class Patience:
    """Steps that trying may still cost; `ended_for` are the pumps whose loop was taken whole since they were spent."""

    steps: int
    ended_for: set[FlowArc] = field(default_factory=set)

    def spend(self, steps: int) -> bool:
        """Take some of the steps; whether there were so many."""
        self.steps -= steps
        return self.steps >= 0


def on_ways_round(
    arcs: list[FlowArc], pump: FlowArc, patience: Patience, goes_round: Goes | None = None
) -> list[FlowArc]:
    """The arcs past which some way round leads that meets no port twice, each way tried; all where none is one-way.

    Ways to a port and on from it that bar each other cannot be told by less. Of a way from the pump's outlet to its
    inlet `goes_round` says whether water takes it (None: always). A loop that would take too long to try is taken
    whole.
    """
    if not one_way(arcs, pump):
        return arcs
    graph = onward(arc for arc in arcs if arc != pump)
    passed: set[Edge] = set()
    for arc in arcs:
        if arc != pump and arc.edge not in passed:
            way = _way_past(graph, pump, arc, patience, goes_round)
            if way is None:
                patience.ended_for.add(pump)
                return arcs
            passed.update(_edge(*ends) for ends in pairwise(way))
    return [arc for arc in arcs if arc == pump or arc.edge in passed] if passed else []


def _way_past(
    graph: "nx.DiGraph[Node]", pump: FlowArc, arc: FlowArc, patience: Patience, goes_round: Goes | None
) -> list[Node] | None:
    """A way from the pump's outlet past an arc back to its inlet, empty if there is none; None if patience ends.

    To find each further way to the arc costs a search from every port of the last.
    """
    before, size = graph.subgraph(graph.nodes - {arc.end, pump.start}), graph.size()
    if not patience.spend(size):
        return None
    if pump.end not in before or arc.start not in before or not nx.has_path(before, pump.end, arc.start):
        return []
    for first in nx.shortest_simple_paths(before, pump.end, arc.start):
        after = graph.subgraph(graph.nodes - set(first))
        if pump.start in after and nx.has_path(after, arc.end, pump.start):
            for second in nx.shortest_simple_paths(after, arc.end, pump.start):
                if goes_round is None or goes_round([*first, *second]):
                    return [*first, *second]
                if not patience.spend(size * len(second)):
                    return None
        if not patience.spend(size * len(first)):
            return None
    return []


def one_way(arcs: list[FlowArc], pump: FlowArc) -> list[FlowArc]:
    """The arcs, the pump's apart, that water passes in no other direction."""
    both_ways = {(arc.start, arc.end) for arc in arcs}
    return [arc for arc in arcs if arc != pump and (arc.end, arc.start) not in both_ways]


def onward(arcs: Iterable[FlowArc]) -> "nx.DiGraph[Node]":
    """The arcs as a graph of ports."""
    return nx.DiGraph((arc.start, arc.end) for arc in arcs)
