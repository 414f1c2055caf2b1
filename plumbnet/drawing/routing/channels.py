"""What runs between two columns: nets of pipes, each with an upright on a track of its own."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import NamedTuple

from plumbnet.drawing.columns import Grid, Layers, Tip

_STRAIGHT = 0.6
"""Pipes that climb less are drawn straight."""
_TOUCH = 4.0
"""Closer than this, two pipes would be taken for one."""
_OVERLAP = 1000.0
"""Cost of two pipes on top of each other, in crossings."""
_ROUNDS = 12


class Pin(NamedTuple):
    """Where a pipe enters a channel: a node, the height there, and whether that is on the left."""

    node: int
    y: float
    is_left: bool


@dataclass(frozen=True, slots=True)
class Strand:
    """A piece of an arc across a channel, between two pins."""

    arc: int
    start: Pin
    end: Pin


@dataclass(frozen=True, slots=True)
class Net:
    """Strands that share an upright; `home` is the height of the joint they meet in, if they meet in one."""

    strands: tuple[Strand, ...]
    home: Pin | None
    pins: tuple[Pin, ...]
    lefts: tuple[float, ...]
    rights: tuple[float, ...]

    @property
    def top(self) -> float:
        """Upper end of the upright."""
        return min((*self.lefts, *self.rights))

    @property
    def foot(self) -> float:
        """Lower end of the upright."""
        return max((*self.lefts, *self.rights))

    @property
    def is_straight(self) -> bool:
        """Whether it needs no upright."""
        return self.foot - self.top < _STRAIGHT


@dataclass(frozen=True, slots=True)
class Channel:
    """The nets between two columns, and the track of each that has an upright."""

    nets: tuple[Net, ...]
    tracks: Mapping[int, int] = field(default_factory=dict)
    clashes: tuple[tuple[Pin, Pin], ...] = ()
    """Pins on the left and on the right whose pipes would lie on top of each other."""

    @property
    def track_count(self) -> int:
        """Number of tracks."""
        return 1 + max(self.tracks.values(), default=-1)


def channels(layers: Layers, height: Mapping[int, float]) -> list[Channel]:
    """The channels, number 0 to the left of the first column, the last to the right of the last."""
    strands: dict[int, list[Strand]] = defaultdict(list)
    for channel, strand in _strands(layers, height):
        strands[channel].append(strand)
    return [channel_of(_nets(layers.grid, strands[number])) for number in range(layers.grid.column_count + 1)]


def _strands(layers: Layers, height: Mapping[int, float]) -> Iterator[tuple[int, Strand]]:
    for number, chain in enumerate(layers.grid.chains):
        arc = layers.grid.graph.arcs[number]
        path = [(node, height[node]) for node in chain]
        for is_head, station in ((False, arc.tail), (True, arc.head)):
            tip = Tip(number, is_head)
            y = height[station] + layers.footprints[station].tips[tip][1]
            at = -1 if is_head else 0
            if tip in layers.wraps:
                wrap = layers.wraps[tip]
                turn = Pin(wrap, height[wrap], is_left=is_head)
                joins = Pin(station, y, is_left=is_head)
                ends = (turn, joins) if is_head else (joins, turn)
                yield layers.grid.column_of[station] + is_head, Strand(number, *ends)
                path[at] = (wrap, height[wrap])
            else:
                path[at] = (station, y)
        first = layers.grid.column_of[arc.tail] + 1
        for channel, ((left, left_y), (right, right_y)) in enumerate(pairwise(path), start=first):
            yield channel, Strand(number, Pin(left, left_y, is_left=True), Pin(right, right_y, is_left=False))


def _nets(grid: Grid, strands: Sequence[Strand]) -> tuple[Net, ...]:
    """Strands grouped by the joint they leave, else by the joint they enter, else each for itself."""
    leaving: dict[Pin, list[Strand]] = defaultdict(list)
    entering: dict[Pin, list[Strand]] = defaultdict(list)
    for strand in strands:
        if strand.start.is_left != strand.end.is_left:
            leaving[strand.start].append(strand)
            entering[strand.end].append(strand)
    nets: list[Net] = []
    taken: set[int] = set()
    for groups in (leaving, entering):
        for home, group in groups.items():
            rest = [strand for strand in group if id(strand) not in taken]
            if len(group) > 1 and rest and not grid.is_waypoint(home.node):
                taken.update(map(id, rest))
                nets.append(net_of(rest, home))
    nets += [net_of([strand], None) for strand in strands if id(strand) not in taken]
    return tuple(nets)


def net_of(strands: Sequence[Strand], home: Pin | None = None) -> Net:
    """The net of strands that share an upright."""
    pins = tuple(sorted({pin for strand in strands for pin in (strand.start, strand.end)}))
    lefts = tuple(pin.y for pin in pins if pin.is_left)
    rights = tuple(pin.y for pin in pins if not pin.is_left)
    return Net(tuple(strands), home, pins, lefts, rights)


def channel_of(nets: tuple[Net, ...]) -> Channel:
    """The channel of some nets: their tracks so that few pipes cross and none lie on each other."""
    upright = [number for number, net in enumerate(nets) if not net.is_straight]
    upright.sort(key=lambda number: (nets[number].top, nets[number].foot))
    cost = {(one, other): _cost(nets[one], nets[other]) for one in upright for other in upright if one != other}
    in_order = _settled(upright, cost)
    tracks: dict[int, int] = {}
    for at, number in enumerate(in_order):
        met = [tracks[other] for other in in_order[:at] if _meets(nets[number], nets[other])]
        tracks[number] = 1 + max(met, default=-1)
    pairs = [(one, other) for at, one in enumerate(in_order) for other in in_order[at + 1 :]]
    clashes = [clash for one, other in pairs for clash in _clashes(nets[one], nets[other])]
    return Channel(nets, tracks, tuple(clashes))


def _settled(numbers: Sequence[int], cost: Mapping[tuple[int, int], float]) -> list[int]:
    """Nets from left to right: each in turn is moved to where it costs least, until nothing gains."""
    order: list[int] = []
    for number in numbers:
        _insert(order, number, cost)
    for _ in range(_ROUNDS):
        before = list(order)
        for number in before:
            order.remove(number)
            _insert(order, number, cost)
        if order == before:
            break
    return order


def _insert(order: list[int], number: int, cost: Mapping[tuple[int, int], float]) -> None:
    total = sum(cost[number, other] for other in order)
    best, least = 0, total
    for at, other in enumerate(order, start=1):
        total += cost[other, number] - cost[number, other]
        if total < least:
            best, least = at, total
    order.insert(best, number)


def _cost(left: Net, right: Net) -> float:
    """Crossings of two nets whose uprights stand in this order, and the overlaps of their pipes."""
    crossings = sum(right.top < y < right.foot for y in left.rights)
    crossings += sum(left.top < y < left.foot for y in right.lefts)
    return crossings + _OVERLAP * sum(1 for _ in _clashes(left, right))


def _clashes(left: Net, right: Net) -> Iterator[tuple[Pin, Pin]]:
    for one in left.pins:
        for other in right.pins:
            if not one.is_left and other.is_left and abs(one.y - other.y) < _TOUCH:
                yield other, one


def _meets(one: Net, other: Net) -> bool:
    """Whether two uprights on one track would touch."""
    return one.top < other.foot + _TOUCH and other.top < one.foot + _TOUCH
