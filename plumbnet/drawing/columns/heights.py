"""Layers to the height of every node: pipes as straight as symbols and words leave room for."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise
from typing import NamedTuple

from plumbnet.drawing.columns.footprints import Tip
from plumbnet.drawing.columns.grid import Grid, Hop
from plumbnet.drawing.columns.layers import Layers
from plumbnet.drawing.columns.mounts import Room
from plumbnet.drawing.columns.programme import Programme
from plumbnet.drawing.palette import Service

APART = 9.0
"""Between two pipes that run side by side."""
CLEAR = 8.0
"""Between a pipe and a symbol, or words."""
_BETWEEN = 12.0
"""Between the rooms of two stations."""
_NO_ROOM = Room(0.0, 0.0, 0.0, 0.0)
_MAIN, _HOT_END, _COLD_END, _BRANCH = 6.0, 1.5, 1.0, 0.6
_LONG = 2.0
_ROOF = 25.0
"""How hard a roof tank is pulled to the top."""
_PULL = 1e-5
_SLIGHT, _SMALL, _TIDY = 0.05, 16.0, 8.0
"""A step of a pipe that is smaller than a symbol looks like a slip: it counts so many times more in a second round."""


class Apart(NamedTuple):
    """A demand that two nodes' pipes keep apart in height: `lower` at least `distance` below `upper`."""

    upper: int
    lower: int
    distance: float


def node_heights(layers: Layers, further: Iterable[Apart] = ()) -> dict[int, float]:
    """The height of every node, from 0 at the top, y growing downwards.

    Least weighted sum of what pipes have to climb from column to column; `further` are demands beyond order and room.
    """
    weights = _weights(layers.grid)
    rough = _solved(layers, further, weights)
    for hop in layers.grid.hops:
        left, right = _joined(hop, layers)
        step = abs(rough[hop.left] + left - rough[hop.right] - right)
        if _SLIGHT < step < _SMALL:
            weights[hop] *= _TIDY
    solved = _solved(layers, further, weights)
    return {node: round(height, 2) for node, height in solved.items()}


def _solved(layers: Layers, further: Iterable[Apart], weights: Mapping[Hop, float]) -> dict[int, float]:
    programme = Programme()
    value = {node: programme.value(_PULL) for column in layers.columns for node in column}
    for hop in layers.grid.hops:
        left, right = _joined(hop, layers)
        programme.near(value[hop.left], value[hop.right], left - right, weights[hop])
    for each in layers.grid.graph.stations:
        if each.item is not None and each.item.is_on_roof:
            programme.costs[value[each.number]] += _ROOF
    for tip, wrap in layers.wraps.items():
        arc = layers.grid.graph.arcs[tip.arc]
        station = arc.head if tip.is_head else arc.tail
        programme.near(value[station], value[wrap], layers.footprints[station].tips[tip][1], _BRANCH)
    top = programme.value()
    programme.fixed[top] = 0.0
    for column in layers.columns:
        programme.demand(top, value[column[0]], _room(layers, column[0]).top)
        for upper, lower in pairwise(column):
            programme.demand(value[upper], value[lower], _distance(layers, upper, lower))
    for upper, lower, distance in further:
        programme.demand(value[upper], value[lower], distance)
    solved = programme.solved()
    return {node: solved[number] for node, number in value.items()}


def _joined(hop: Hop, layers: Layers) -> tuple[float, float]:
    """Offsets at which a hop joins its nodes; a backward tip's arc goes by way of its wrap, at no offset."""
    arc = layers.grid.graph.arcs[hop.arc]
    found = []
    for node, station, is_head in ((hop.left, arc.tail, False), (hop.right, arc.head, True)):
        tip = Tip(hop.arc, is_head)
        joins = node == station and tip not in layers.footprints[station].backward
        found.append(layers.footprints[station].tips[tip][1] if joins else 0.0)
    return found[0], found[1]


def _weights(grid: Grid) -> dict[Hop, float]:
    """How straight each hop should be: the run of a joint before its branches, long pipes before short ones."""
    leads_on = {arc.tail for arc in grid.graph.arcs}
    mains = set(_mains(grid, leads_on))
    found: dict[Hop, float] = {}
    for hop in grid.hops:
        arc = grid.graph.arcs[hop.arc]
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
    arcs = grid.graph.arcs
    for number, arc in enumerate(arcs):
        leaving[arc.tail].append(number)
        coming[arc.head].append(number)

    def standing(number: int) -> tuple[bool, bool, bool, int]:
        arc = arcs[number]
        return not arc.is_run, arc.head not in leads_on, arc.service is Service.RETURN, number

    for number, arc in enumerate(arcs):
        first_out = not grid.graph.stations[arc.tail].is_joint or min(leaving[arc.tail], key=standing) == number
        first_in = not grid.graph.stations[arc.head].is_joint or min(coming[arc.head], key=standing) == number
        if first_out and first_in:
            yield number


def _distance(layers: Layers, upper: int, lower: int) -> float:
    """How far the middles of two neighbours in a column must stand apart."""
    rooms = [_room(layers, node) for node in (upper, lower)]
    lines = sum(node >= len(layers.grid.graph.stations) for node in (upper, lower))
    gap = (_BETWEEN, CLEAR, APART)[lines]
    if lines == 0 and any(layers.grid.graph.stations[node].is_joint for node in (upper, lower)):
        gap = CLEAR
    return rooms[0].bottom + rooms[1].top + gap


def _room(layers: Layers, node: int) -> Room:
    return layers.footprints[node].room if node < len(layers.grid.graph.stations) else _NO_ROOM
