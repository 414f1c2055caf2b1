"""A plan in columns to a grid: cells, and a waypoint in each column that an arc passes."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from plumbnet.report.drawing.plan import Arc, Plan
from plumbnet.report.palette import Service

_RETURN_WEIGHT = 0.35
"""A crossing with a return, which is dashed and gives way, disturbs less than one of two mains."""


class Hop(NamedTuple):
    """A piece of an arc from a node in one column to a node in the next."""

    left: int
    right: int
    arc: int


@dataclass(frozen=True)
class Grid:
    """Nodes in columns: the cells, numbered as in the plan, then the waypoints; `chains` are the nodes of each arc."""

    plan: Plan
    column_of: tuple[int, ...]
    chains: tuple[tuple[int, ...], ...]

    @property
    def column_count(self) -> int:
        """Number of columns."""
        return max(self.column_of, default=-1) + 1

    def is_waypoint(self, node: int) -> bool:
        """Whether an arc only passes here."""
        return node >= len(self.plan.cells)

    @cached_property
    def arc_through(self) -> dict[int, int]:
        """The arc of each waypoint."""
        return {node: number for number, chain in enumerate(self.chains) for node in chain[1:-1]}

    @cached_property
    def hops(self) -> tuple[Hop, ...]:
        """Every hop of every arc."""
        return tuple(self._hops())

    def _hops(self) -> Iterator[Hop]:
        for number, chain in enumerate(self.chains):
            for left, right in pairwise(chain):
                yield Hop(left, right, number)

    def weight(self, hop: Hop) -> float:
        """How much a crossing with a hop disturbs."""
        return _RETURN_WEIGHT if self.plan.arcs[hop.arc].service is Service.RETURN else 1.0

    @cached_property
    def arcs_at(self) -> dict[int, list[Arc]]:
        """The arcs of each cell."""
        found: dict[int, list[Arc]] = defaultdict(list)
        for arc in self.plan.arcs:
            found[arc.tail].append(arc)
            found[arc.head].append(arc)
        return found


def grid_of(plan: Plan, columns: Sequence[int]) -> Grid:
    """The grid of a plan whose cells stand in `columns`."""
    column_of = list(columns)
    chains: list[tuple[int, ...]] = []
    for arc in plan.arcs:
        chain = [arc.tail]
        for column in range(columns[arc.tail] + 1, columns[arc.head]):
            chain.append(len(column_of))
            column_of.append(column)
        chains.append((*chain, arc.head))
    return Grid(plan, tuple(column_of), tuple(chains))
