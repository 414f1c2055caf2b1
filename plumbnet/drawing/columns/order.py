"""A grid to the order of the nodes in each column, from the top down, with few crossings of pipes.

Several first orders are bettered by barycentres and by swaps of neighbours (the usual sweeps of layered drawing);
the best is kept. What stands high in the building goes up where that costs no crossing.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from plumbnet.drawing.columns.grid import Grid
from plumbnet.drawing.palette import Service

Columns = list[list[int]]

_RANK = {Service.HOT: 0, Service.MIXED: 0, Service.RETURN: 2, Service.COLD: 3}
_END_RANK = 1
_SWEEPS = 24
_PATIENCE = 6
"""Sweeps without a gain after which a start is given up."""
_MOST_WORK = 60_000
"""Nodes looked at, over all sweeps; a very large drawing gets fewer sweeps."""
_SWAP_ROUNDS = 4
_PER_METRE = 0.06
_MOST_FOR_HEIGHT = 1.2
_STOREY_M = 2.4
_NOWHERE = float("nan")
_ROOF_M = 100.0
"""Added to the height of a roof tank, so that it goes to the top even at the price of a crossing."""
_LEAST = 1e-9
"""Weighted crossings that count as none."""
_PORT_SHARE = 0.005
"""Share of a row by which a port's height counts, in rows to a point."""


def order(grid: Grid) -> Columns:
    """The nodes of each column from the top down. Deterministic; a bounded number of sweeps."""
    work = _Work(grid)
    best, fewest = None, math.inf
    sweeps = max(2, min(_SWEEPS, _MOST_WORK // max(1, len(grid.column_of))))
    for start in work.starts():
        found, crossings = work.bettered(start, sweeps)
        if crossings < fewest:
            best, fewest = found, crossings
    return best or []


@dataclass(slots=True)
class _Edge:
    """A neighbour in the next column, the heights of both ports as shares of a row, and a weight."""

    node: int
    near: float
    far: float
    weight: float


@dataclass(slots=True)
class _Work:
    """What the sweeps look up."""

    grid: Grid
    right: dict[int, list[_Edge]] = field(default_factory=dict)
    left: dict[int, list[_Edge]] = field(default_factory=dict)
    height: list[float] = field(default_factory=list)

    def __post_init__(self) -> None:
        for hop in self.grid.hops:
            arc = self.grid.graph.arcs[hop.arc]
            near = self._share(hop.left, arc.tail, arc.tail_port)
            far = self._share(hop.right, arc.head, arc.head_port)
            weight = self.grid.weight(hop)
            self.right.setdefault(hop.left, []).append(_Edge(hop.right, near, far, weight))
            self.left.setdefault(hop.right, []).append(_Edge(hop.left, far, near, weight))
        self.height = [self._height(node) for node in range(len(self.grid.column_of))]

    def _share(self, node: int, station: int, port: str) -> float:
        item = self.grid.graph.stations[station].item
        if node != station or item is None or item.symbol.turns or item.symbol.one_side:
            return 0.0
        return item.symbol.sockets.get(port, (0.0, 0.0))[1] * _PORT_SHARE

    def starts(self) -> list[Columns]:
        """First orders: by a depth-first walk, and by service."""
        walked = self._walk()
        ranks = [self._rank(node) for node in range(len(self.grid.column_of))]
        keys: tuple[Callable[[int], tuple[float, ...]], ...] = (
            lambda node: (walked[node],),
            lambda node: (ranks[node], node),
            lambda node: (ranks[node], walked[node]),
            lambda node: (-0.0 if math.isnan(self.height[node]) else -self.height[node], walked[node]),
        )
        found = []
        for key in keys:
            columns: Columns = [[] for _ in range(self.grid.column_count)]
            for node in sorted(range(len(self.grid.column_of)), key=key):
                columns[self.grid.column_of[node]].append(node)
            found.append(columns)
        return found

    def _walk(self) -> dict[int, int]:
        """The nodes in depth-first order, hot before cold."""
        found: dict[int, int] = {}
        starts = sorted(range(len(self.grid.column_of)), key=lambda node: (self.grid.column_of[node], node))
        for start in starts:
            stack = [start]
            while stack:
                node = stack.pop()
                if node in found:
                    continue
                found[node] = len(found)
                nexts = [edge.node for edge in self.right.get(node, ())]
                stack += sorted(nexts, key=lambda other: (self._rank(other), other), reverse=True)
        return found

    def _rank(self, node: int) -> int:
        arc = self.grid.arc_through.get(node)
        if arc is not None:
            return _RANK[self.grid.graph.arcs[arc].service]
        ranks = [_RANK[arc.service] for arc in self.grid.arcs_at.get(node, ())]
        is_end = not self.right.get(node) and len(set(ranks)) > 1
        return _END_RANK if is_end else min(ranks, default=_END_RANK)

    def _height(self, node: int) -> float:
        """Elevation of a station; of a waypoint that of the end it leads to, and none where it leads on."""
        arc = self.grid.arc_through.get(node)
        station = node if arc is None else self.grid.graph.arcs[arc].head
        item = self.grid.graph.stations[station].item
        if item is None or (arc is not None and self.right.get(station)):
            return _NOWHERE
        return item.elevation_m + (_ROOF_M if item.is_on_roof else 0.0)

    def bettered(self, columns: Columns, sweeps: int) -> tuple[Columns, float]:
        """The best order met, and its crossings."""
        best, fewest, idle = [list(column) for column in columns], math.inf, 0
        for sweep in range(sweeps + 1):
            if sweep:
                self._sweep(columns, to_right=sweep % 2 == 1)
            self._swap(columns)
            crossings = self._crossings(columns)
            if crossings < fewest - _LEAST:
                best, fewest, idle = [list(column) for column in columns], crossings, 0
            else:
                idle += 1
            if idle > _PATIENCE or fewest <= 0.0:
                break
        return best, fewest

    def _sweep(self, columns: Columns, *, to_right: bool) -> None:
        edges = self.left if to_right else self.right
        numbers = range(1, len(columns)) if to_right else range(len(columns) - 2, -1, -1)
        for number in numbers:
            place = _places(columns[number - 1 if to_right else number + 1])
            middle: dict[int, float] = {}
            for at, node in enumerate(columns[number]):
                met = [place[edge.node] + edge.far for edge in edges.get(node, ())]
                middle[node] = sum(met) / len(met) if met else float(at)
            columns[number].sort(key=middle.__getitem__)

    def _swap(self, columns: Columns) -> None:
        for _ in range(_SWAP_ROUNDS):
            changed = False
            for number, column in enumerate(columns):
                left = _places(columns[number - 1]) if number else {}
                right = _places(columns[number + 1]) if number + 1 < len(columns) else {}
                for at in range(len(column) - 1):
                    if self._gain(column[at], column[at + 1], left, right) > _LEAST:
                        column[at], column[at + 1] = column[at + 1], column[at]
                        changed = True
            if not changed:
                return

    def _gain(self, upper: int, lower: int, left: dict[int, int], right: dict[int, int]) -> float:
        """Crossings that go when two neighbours change places."""
        gain = 0.0
        for edges, place in ((self.left, left), (self.right, right)):
            for one in edges.get(upper, ()):
                at = place[one.node] + one.far
                for other in edges.get(lower, ()):
                    to = place[other.node] + other.far
                    if at > to:
                        gain += one.weight * other.weight
                    elif at < to:
                        gain -= one.weight * other.weight
        return gain + self._above(lower, upper) - self._above(upper, lower)

    def _above(self, one: int, other: int) -> float:
        """What it counts, in crossings, to draw a node below another that stands lower in the building."""
        higher_m = self.height[one] - self.height[other]
        return min(_MOST_FOR_HEIGHT, higher_m * _PER_METRE) if higher_m >= _STOREY_M else 0.0

    def _crossings(self, columns: Columns) -> float:
        """Weighted crossings, and what neighbours count that stand in the wrong order of height."""
        crossed = sum(self._between(column, _places(following)) for column, following in pairwise(columns))
        return crossed + sum(self._above(lower, upper) for column in columns for upper, lower in pairwise(column))

    def _between(self, column: Sequence[int], place: dict[int, int]) -> float:
        """Weighted crossings between a column and the next: inversions, counted with a tree of partial sums."""
        ends = sorted(
            (at + edge.near, place[edge.node] + edge.far, edge.weight)
            for at, node in enumerate(column)
            for edge in self.right.get(node, ())
        )
        rank = {far: number for number, far in enumerate(sorted({far for _, far, _ in ends}), start=1)}
        tree = [0.0] * (len(rank) + 1)
        total = before = 0.0
        for _, far, weight in ends:
            below, at = 0.0, rank[far]
            while at:
                below += tree[at]
                at -= at & -at
            total += weight * (before - below)
            before += weight
            at = rank[far]
            while at < len(tree):
                tree[at] += weight
                at += at & -at
        return total


def _places(column: Sequence[int]) -> dict[int, int]:
    return {node: at for at, node in enumerate(column)}
