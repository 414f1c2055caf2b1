"""An ordered grid with stances to the height of every node: pipes as straight as symbols and words leave room for."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import NamedTuple

from plumbnet.report.drawing.grid import Grid, Hop
from plumbnet.report.drawing.hanging import Room
from plumbnet.report.drawing.linear import Programme
from plumbnet.report.drawing.stance import Stance, Tip
from plumbnet.report.palette import Service

APART = 9.0
"""Between two pipes that run side by side."""
CLEAR = 8.0
"""Between a pipe and a symbol, or words."""
_BETWEEN = 12.0
"""Between the rooms of two cells."""
_NO_ROOM = Room(0.0, 0.0, 0.0, 0.0)
_MAIN, _HOT_END, _COLD_END, _BRANCH = 6.0, 1.5, 1.0, 0.6
_LONG = 2.0
_ROOF = 25.0
"""How hard a roof tank is pulled to the top."""
_PULL = 1e-5
_SLIGHT, _SMALL, _TIDY = 0.05, 16.0, 8.0
"""A step of a pipe that is smaller than a symbol looks like a slip: it counts so many times more in a second round."""


class Wrap(NamedTuple):
    """A waypoint beside a cell, round which an arc turns that leaves the cell on its far side."""

    node: int
    tip: Tip


@dataclass(frozen=True, slots=True)
class Ranks:
    """The nodes of each column from the top down, the wraps among them, and the wrap of each backward tip."""

    columns: tuple[tuple[int, ...], ...]
    wraps: dict[Tip, int] = field(default_factory=dict)


class Apart(NamedTuple):
    """A demand that two nodes' pipes keep apart in height: `lower` at least `distance` below `upper`."""

    upper: int
    lower: int
    distance: float


def ranks(grid: Grid, columns: Sequence[Sequence[int]], stances: Sequence[Stance]) -> Ranks:
    """The columns with a wrap next to each cell that needs one, on the side of what its arc leads to."""
    place = {node: (at + 0.5) / len(column) for column in columns for at, node in enumerate(column)}
    wraps: dict[Tip, int] = {}
    found: list[tuple[int, ...]] = []
    number = len(grid.column_of)
    for column in columns:
        ranked: list[int] = []
        for node in column:
            above, below = list[int](), list[int]()
            for tip in sorted(stances[node].backward) if not grid.is_waypoint(node) else ():
                chain = grid.chains[tip.arc]
                beyond = place[chain[-2] if tip.is_head else chain[1]]
                (above if beyond < place[node] else below).append(number)
                wraps[tip] = number
                number += 1
            ranked += [*above, node, *below]
        found.append(tuple(ranked))
    return Ranks(tuple(found), wraps)


def heights(grid: Grid, ranked: Ranks, stances: Sequence[Stance], further: Iterable[Apart] = ()) -> dict[int, float]:
    """The height of every node, from 0 at the top, y growing downwards.

    Least weighted sum of what pipes have to climb from column to column; `further` are demands beyond order and room.
    """
    weights = _weights(grid)
    rough = _solved(grid, ranked, stances, further, weights)
    for hop in grid.hops:
        left, right = _joined(hop, grid, stances)
        step = abs(rough[hop.left] + left - rough[hop.right] - right)
        if _SLIGHT < step < _SMALL:
            weights[hop] *= _TIDY
    solved = _solved(grid, ranked, stances, further, weights)
    return {node: round(height, 2) for node, height in solved.items()}


def _solved(
    grid: Grid, ranked: Ranks, stances: Sequence[Stance], further: Iterable[Apart], weights: Mapping[Hop, float]
) -> dict[int, float]:
    programme = Programme()
    value = {node: programme.value(_PULL) for column in ranked.columns for node in column}
    for hop in grid.hops:
        left, right = _joined(hop, grid, stances)
        programme.near(value[hop.left], value[hop.right], left - right, weights[hop])
    for each in grid.plan.cells:
        if each.item is not None and each.item.is_on_roof:
            programme.costs[value[each.number]] += _ROOF
    for tip, wrap in ranked.wraps.items():
        arc = grid.plan.arcs[tip.arc]
        cell = arc.head if tip.is_head else arc.tail
        programme.near(value[cell], value[wrap], stances[cell].tips[tip][1], _BRANCH)
    top = programme.value()
    programme.fixed[top] = 0.0
    for column in ranked.columns:
        programme.demand(top, value[column[0]], _room(grid, stances, column[0]).top)
        for upper, lower in pairwise(column):
            programme.demand(value[upper], value[lower], _distance(grid, stances, upper, lower))
    for upper, lower, distance in further:
        programme.demand(value[upper], value[lower], distance)
    solved = programme.solved()
    return {node: solved[number] for node, number in value.items()}


def _joined(hop: Hop, grid: Grid, stances: Sequence[Stance]) -> tuple[float, float]:
    """Offsets at which a hop joins its nodes; a backward tip's arc goes by way of its wrap, at no offset."""
    arc = grid.plan.arcs[hop.arc]
    found = []
    for node, cell, is_head in ((hop.left, arc.tail, False), (hop.right, arc.head, True)):
        tip = Tip(hop.arc, is_head)
        joins = node == cell and tip not in stances[cell].backward
        found.append(stances[cell].tips[tip][1] if joins else 0.0)
    return found[0], found[1]


def _weights(grid: Grid) -> dict[Hop, float]:
    """How straight each hop should be: the run of a joint before its branches, long pipes before short ones."""
    leads_on = {arc.tail for arc in grid.plan.arcs}
    mains = set(_mains(grid, leads_on))
    found: dict[Hop, float] = {}
    for hop in grid.hops:
        arc = grid.plan.arcs[hop.arc]
        if hop.arc not in mains:
            weight = _BRANCH
        elif arc.head not in leads_on:
            weight = _COLD_END if arc.service is Service.COLD else _HOT_END
        else:
            weight = _MAIN
        is_long = grid.is_waypoint(hop.left) or grid.is_waypoint(hop.right)
        found[hop] = weight * (_LONG if is_long else 1.0)
    return found


def _mains(grid: Grid, leads_on: set[int]) -> Iterator[int]:
    """Arcs that go straight through: all but those that branch off a joint, on either side."""
    leaving: dict[int, list[int]] = defaultdict(list)
    coming: dict[int, list[int]] = defaultdict(list)
    arcs = grid.plan.arcs
    for number, arc in enumerate(arcs):
        leaving[arc.tail].append(number)
        coming[arc.head].append(number)

    def standing(number: int) -> tuple[bool, bool, bool, int]:
        arc = arcs[number]
        return not arc.is_run, arc.head not in leads_on, arc.service is Service.RETURN, number

    for number, arc in enumerate(arcs):
        first_out = not grid.plan.cells[arc.tail].is_joint or min(leaving[arc.tail], key=standing) == number
        first_in = not grid.plan.cells[arc.head].is_joint or min(coming[arc.head], key=standing) == number
        if first_out and first_in:
            yield number


def _distance(grid: Grid, stances: Sequence[Stance], upper: int, lower: int) -> float:
    """How far the middles of two neighbours in a column must stand apart."""
    rooms = [_room(grid, stances, node) for node in (upper, lower)]
    lines = sum(node >= len(grid.plan.cells) for node in (upper, lower))
    gap = (_BETWEEN, CLEAR, APART)[lines]
    if lines == 0 and any(grid.plan.cells[node].is_joint for node in (upper, lower)):
        gap = CLEAR
    return rooms[0].bottom + rooms[1].top + gap


def _room(grid: Grid, stances: Sequence[Stance], node: int) -> Room:
    return stances[node].room if node < len(grid.plan.cells) else _NO_ROOM
