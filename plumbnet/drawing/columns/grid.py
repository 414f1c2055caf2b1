"""A graph in columns to a grid: stations, and a waypoint in each column that an arc passes."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from plumbnet.drawing.columns.arcs import Arc, ArcGraph
from plumbnet.drawing.palette import Service

_RETURN_WEIGHT = 0.35
"""A crossing with a return, which is dashed and gives way, disturbs less than one of two mains."""


class Hop(NamedTuple):
    """A piece of an arc from a node in one column to a node in the next."""

    left: int
    right: int
    arc: int


@dataclass(frozen=True)
class Grid:
    """Stations as numbered in the graph, then waypoints, each in its column; `chains` are the nodes of each arc."""

    graph: ArcGraph
    column_of: tuple[int, ...]
    chains: tuple[tuple[int, ...], ...]

    @property
    def column_count(self) -> int:
        """Number of columns."""
        return max(self.column_of, default=-1) + 1

    def is_waypoint(self, node: int) -> bool:
        """Whether an arc only passes here."""
        return node >= len(self.graph.stations)

    @cached_property
    def arc_through(self) -> dict[int, int]:
        """The arc of each waypoint."""
        return {node: number for number, chain in enumerate(self.chains) for node in chain[1:-1]}

    @cached_property
    def hops(self) -> tuple[Hop, ...]:
        """Every hop of every arc."""
        chains = enumerate(self.chains)
        return tuple(Hop(left, right, number) for number, chain in chains for left, right in pairwise(chain))

    def weight(self, hop: Hop) -> float:
        """How much a crossing with a hop disturbs."""
        return _RETURN_WEIGHT if self.graph.arcs[hop.arc].service is Service.RETURN else 1.0

    @cached_property
    def arcs_at(self) -> dict[int, list[Arc]]:
        """The arcs of each station."""
        found: dict[int, list[Arc]] = defaultdict(list)
        for arc in self.graph.arcs:
            found[arc.tail].append(arc)
            found[arc.head].append(arc)
        return found


def grid_of(graph: ArcGraph, columns: Sequence[int]) -> Grid:
    """The grid of a graph whose stations stand in `columns`."""
    column_of = list(columns)
    chains: list[tuple[int, ...]] = []
    for arc in graph.arcs:
        chain = [arc.tail]
        for column in range(columns[arc.tail] + 1, columns[arc.head]):
            chain.append(len(column_of))
            column_of.append(column)
        chains.append((*chain, arc.head))
    return Grid(graph, tuple(column_of), tuple(chains))
