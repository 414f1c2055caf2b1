"""Coordinates to the points of every arc, what arcs of one joint share drawn once."""

import math
from collections import defaultdict
from collections.abc import Sequence
from typing import NamedTuple

from plumbnet.drawing.columns import Tip
from plumbnet.drawing.routing.channels import Net, Strand
from plumbnet.drawing.routing.coordinates import Coordinates
from plumbnet.drawing.routing.corners import simple
from plumbnet.drawing.symbols import Point


class Polyline(NamedTuple):
    """The points of a pipe, and the ways before and after it that it shares with other pipes of its joints."""

    points: tuple[Point, ...]
    before: tuple[Point, ...] = ()
    after: tuple[Point, ...] = ()

    @property
    def turned(self) -> "Polyline":
        """The same from end to start."""
        return Polyline(self.points[::-1], self.after[::-1], self.before[::-1])


class _Upright(NamedTuple):
    """A strand of an arc with its net and the x of its upright."""

    x: float
    strand: Strand
    net: Net


def polylines(coordinates: Coordinates) -> list[Polyline]:
    """The line of every arc, from tail to head."""
    uprights = _uprights(coordinates)
    return [_line(coordinates, number, uprights[number]) for number in range(len(coordinates.graph.arcs))]


def branch_height(net: Net, strand: Strand) -> float:
    """Height at which a strand leaves, or comes to, the upright of its net on the side away from home."""
    return (strand.end if strand.start == net.home else strand.start).y


def _uprights(coordinates: Coordinates) -> dict[int, list[_Upright]]:
    """The strands of every arc, from tail to head."""
    found: dict[int, list[_Upright]] = defaultdict(list)
    for number, channel in enumerate(coordinates.between):
        for at, net in enumerate(channel.nets):
            for strand in net.strands:
                found[strand.arc].append(_Upright(coordinates.track_x(number, at), strand, net))
    column_of = {node: number for number, column in enumerate(coordinates.layers.columns) for node in column}
    for uprights in found.values():
        uprights.sort(key=lambda upright: _rank(upright.strand, column_of))
    return found


def _rank(strand: Strand, column_of: dict[int, int]) -> float:
    """Sorts the strands of an arc: a turn round the tail first, a turn round the head last."""
    if strand.start.is_left == strand.end.is_left:
        return math.inf if strand.start.is_left else -math.inf
    return column_of[strand.start.node]


def _line(coordinates: Coordinates, number: int, uprights: Sequence[_Upright]) -> Polyline:
    points: list[Point] = []
    before: tuple[Point, ...] = ()
    after: tuple[Point, ...] = ()
    for upright in uprights:
        x, strand, net = upright
        start, end = (x, strand.start.y), (x, strand.end.y)
        if net.home is not None and strand.start == net.home:
            before, start = _shared(coordinates, number, upright)
        elif net.home is not None and strand.end == net.home:
            after, end = _shared(coordinates, number, upright)
        points += [start, end]
    arc = coordinates.graph.arcs[number]
    if not _is_met(coordinates, uprights[0], at_start=True):
        tip = coordinates.tip(arc.tail, Tip(number, is_head=False), points[0][0])
        points[:0] = [*coordinates.inside(arc.tail), tip]
    if not _is_met(coordinates, uprights[-1], at_start=False):
        tip = coordinates.tip(arc.head, Tip(number, is_head=True), points[-1][0])
        points += [tip, *coordinates.inside(arc.head)[::-1]]
    return Polyline(simple(points), simple(before), simple(after[::-1]))


def _is_met(coordinates: Coordinates, upright: _Upright, *, at_start: bool) -> bool:
    """Whether an arc begins, or ends, on the upright of its joint, or where another pipe has drawn the way."""
    _, strand, net = upright
    if net.home is None or (strand.start if at_start else strand.end) != net.home:
        return False
    return coordinates.is_joint(net.home.node) or strand is not _nearest(net)


def _shared(coordinates: Coordinates, number: int, upright: _Upright) -> tuple[tuple[Point, ...], Point]:
    """What a strand shares with others of its net, from where they meet; and where it goes on alone."""
    x, strand, net = upright
    home = net.home or strand.start
    base, branch = (x, home.y), (x, _alone_from(net, strand))
    if coordinates.is_joint(home.node):
        return (base, branch) if branch != base else (), branch
    if strand is _nearest(net):
        return (), base
    tip = coordinates.tip(home.node, Tip(number, is_head=strand.end == home), x)
    return (tip, base, branch), branch


def _nearest(net: Net) -> Strand:
    """The strand that branches off first from where those of a net meet."""
    home = net.strands[0].start.y if net.home is None else net.home.y
    return min(net.strands, key=lambda strand: abs(branch_height(net, strand) - home))


def _alone_from(net: Net, strand: Strand) -> float:
    """Height to which a strand's upright is drawn already as that of pipes that branch off nearer to the joint."""
    home = 0.0 if net.home is None else net.home.y
    own, others = branch_height(net, strand), [branch_height(net, each) for each in net.strands]
    if own >= home:
        return max((y for y in others if home < y < own), default=home)
    return min((y for y in others if own < y < home), default=home)
