"""A diagram to a graph: stations that stand in columns, and arcs between them that all lead to the right.

Returns are turned round for the layout alone, so that a pump drives to the left on its way back. A joint that
feeds several ends is drawn out into a run with a branch for each, as a draughtsman would: a station for each piece.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from graphlib import TopologicalSorter

from plumbnet.drawing.items import Diagram, Item, Link
from plumbnet.drawing.palette import Service

MIDDLE = ""
"""The port of a joint's piece, and of a bend."""
_PAIR = 2


@dataclass(frozen=True, slots=True)
class Station:
    """An item, a piece of a joint, or (without an item) a bend of a pipe."""

    number: int
    item: Item | None

    @property
    def is_joint(self) -> bool:
        """Whether any number of pipes meets in its middle."""
        return self.item is None or self.item.symbol.is_joint


@dataclass(frozen=True, slots=True)
class Arc:
    """A pipe, or (without a link) the run between two pieces of a joint, from a station to one further right.

    `is_turned`: the pipe was drawn by its author from head to tail. `least` is the number of columns it spans
    at least. `is_run` marks the arc that carries a joint's run straight on.
    """

    tail: int
    head: int
    tail_port: str
    head_port: str
    link: Link | None
    service: Service
    is_turned: bool = False
    least: int = 1
    is_run: bool = False


@dataclass(frozen=True, slots=True)
class ArcGraph:
    """Stations by number, arcs, and the pieces of each item, in the order of the run."""

    stations: tuple[Station, ...]
    arcs: tuple[Arc, ...]
    pieces: Mapping[str, tuple[int, ...]]


@dataclass(frozen=True, slots=True)
class _Way:
    """A link between two different items, in the direction it has on paper."""

    tail: str
    head: str
    link: Link
    is_turned: bool

    @property
    def turned(self) -> "_Way":
        return _Way(self.head, self.tail, self.link, not self.is_turned)


def arc_graph(diagram: Diagram) -> ArcGraph:
    """The graph of a diagram; linear but for the sorting of a joint's branches."""
    ways = _acyclic(diagram, [_way(link) for link in diagram.links if not link.is_round])
    outs: dict[str, list[_Way]] = defaultdict(list)
    for way in ways:
        outs[way.tail].append(way)
    depth = _depths(diagram, ways)
    builder = _Builder()
    order = _branch_order(diagram, outs, depth)
    for item in diagram.items.values():
        pieces = _pieces(sorted(outs[item.name], key=order), outs) if item.symbol.is_joint else []
        builder.add_item(item, pieces, outs)
    for way in ways:
        builder.add_way(way)
    for link in diagram.links:
        if link.is_round:
            builder.add_round(link)
    return ArcGraph(tuple(builder.stations), tuple(builder.arcs), {n: tuple(p) for n, p in builder.pieces.items()})


def _way(link: Link) -> _Way:
    way = _Way(link.start.part, link.end.part, link, is_turned=False)
    return way.turned if link.service is Service.RETURN else way


def _acyclic(diagram: Diagram, ways: Sequence[_Way]) -> list[_Way]:
    """The ways with as many turned round as it takes to leave no circle: those that lead back in a depth-first walk."""
    onward: dict[str, list[int]] = defaultdict(list)
    for number, way in enumerate(ways):
        onward[way.tail].append(number)
    heads = {way.head for way in ways}
    starts = sorted(diagram.items.values(), key=lambda item: (not item.is_source, item.name in heads))
    state: dict[str, bool] = {}
    found = list(ways)
    for start in starts:
        walk = [(start.name, iter(onward[start.name]))] if start.name not in state else []
        state.setdefault(start.name, True)
        while walk:
            name, rest = walk[-1]
            following = next(rest, None)
            if following is None:
                state[name] = False
                walk.pop()
                continue
            way = ways[following]
            if way.head not in state:
                state[way.head] = True
                walk.append((way.head, iter(onward[way.head])))
            elif state[way.head]:
                found[following] = way.turned
    return found


def _depths(diagram: Diagram, ways: Iterable[_Way]) -> dict[str, int]:
    """Length of the longest way to each item."""
    before: dict[str, list[str]] = {name: [] for name in diagram.items}
    for way in ways:
        before[way.head].append(way.tail)
    depth: dict[str, int] = {}
    for name in TopologicalSorter(before).static_order():
        depth[name] = 1 + max((depth[tail] for tail in before[name]), default=-1)
    return depth


def _branch_order(
    diagram: Diagram, outs: Mapping[str, Sequence[_Way]], depth: Mapping[str, int]
) -> Callable[[_Way], tuple[bool, int, int]]:
    """Sorts what leaves a joint: what leads on before what ends, and ends from near to far."""
    places = {name: place for place, name in enumerate(diagram.items)}

    def order(way: _Way) -> tuple[bool, int, int]:
        ends = not outs.get(way.head)
        return ends, depth[way.head] if ends else 0, places[way.head]

    return order


def _pieces(leaving: Sequence[_Way], outs: Mapping[str, Sequence[_Way]]) -> list[list[_Way]]:
    """What leaves a joint, piece by piece along its run: what leads on, then end after end, the last two together."""
    onward = [way for way in leaving if outs.get(way.head)]
    ends = [way for way in leaving if not outs.get(way.head)]
    if len(ends) <= 1:
        return [onward + ends]
    branches = [[end] for end in ends[:-2]] + [ends[-2:]]
    return [onward, *branches] if onward else branches


class _Builder:
    """Gathers stations and arcs."""

    def __init__(self) -> None:
        self.stations: list[Station] = []
        self.arcs: list[Arc] = []
        self.pieces: dict[str, list[int]] = defaultdict(list)
        self.leaves: dict[int, int] = {}
        self.least: dict[int, int] = {}

    def add_item(self, item: Item, pieces: Sequence[Sequence[_Way]], outs: Mapping[str, Sequence[_Way]]) -> None:
        """A station for the item; for a joint a station for each piece of its run."""
        station = self._add_station(item)
        for number, piece in enumerate(pieces):
            if number:
                following = self._add_station(item)
                service = piece[0].link.service
                self.arcs.append(Arc(station, following, MIDDLE, MIDDLE, None, service, is_run=True))
                station = following
            self.leaves.update((way.link.number, station) for way in piece)
        if pieces and len(pieces[-1]) == _PAIR and not any(outs.get(way.head) for way in pieces[-1]):
            self.least[pieces[-1][-1].link.number] = _PAIR

    def add_way(self, way: _Way) -> None:
        """The arc of a pipe between two items."""
        tail = self.leaves.get(way.link.number, self.pieces[way.tail][0])
        head = self.pieces[way.head][0]
        first, second = (way.link.end, way.link.start) if way.is_turned else (way.link.start, way.link.end)
        tail_port = MIDDLE if self.stations[tail].is_joint else first.port
        head_port = MIDDLE if self.stations[head].is_joint else second.port
        least = self.least.get(way.link.number, 1)
        if tail_port == head_port == MIDDLE and any((arc.tail, arc.head) == (tail, head) for arc in self.arcs):
            # Side by side with another pipe it needs a row of its own, and so a column on its way.
            least = max(least, _PAIR)
        self.arcs.append(Arc(tail, head, tail_port, head_port, way.link, way.link.service, way.is_turned, least))

    def add_round(self, link: Link) -> None:
        """A pipe from one port of an item to another: out to a bend on its right, and back."""
        bend = self._add_station(None)
        station = self.pieces[link.start.part][0]
        for end in (link.start, link.end):
            self.arcs.append(Arc(station, bend, end.port, MIDDLE, link, link.service, is_turned=end is link.end))

    def _add_station(self, item: Item | None) -> int:
        station = Station(len(self.stations), item)
        self.stations.append(station)
        if item is not None:
            self.pieces[item.name].append(station.number)
        return station.number
