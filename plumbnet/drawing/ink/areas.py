"""What of the piping lies in a shaded zone, and the way out as one line across symbols."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from plumbnet.drawing.items import Diagram
from plumbnet.drawing.routing import Arrangement, Box, Route
from plumbnet.drawing.symbols import Point
from plumbnet.layout.model import End

_BESIDE_PIPE = 6.0
_BESIDE_SYMBOL = 4.0
_BESIDE_WORDS = 2.0
_STAND_BACK = 6.0


def zone_boxes(
    diagram: Diagram, arrangement: Arrangement, ports: frozenset[End], names: Mapping[str, Box]
) -> list[Box]:
    """Boxes round all pipes of the zone of `ports`, round the parts that lie in it whole, and round their words.

    `names` are the boxes of the names of joints.
    """
    parts = {end.part for end in ports}
    boxes: list[Box] = []
    for route in arrangement.routes:
        if _lies_in(diagram, route, ports, parts):
            points = _inside(diagram, route, ports)
            boxes += [_round(a, b) for way in (points, route.before, route.after) for a, b in pairwise(way)]
    for placement in arrangement.placements:
        if is_inside(diagram, placement.item.name, ports):
            boxes.append(_grown(placement.outer_box, _BESIDE_SYMBOL))
            if placement.item.lines:
                boxes.append(_grown(placement.words_box, _BESIDE_WORDS))
    return boxes + [_grown(box, _BESIDE_WORDS) for name, box in names.items() if name in parts]


@dataclass(frozen=True, slots=True)
class ZonePieces:
    """All that any zone might cover, in boxes: pipes by number, drawn back from devices, parts and runs by name.

    A `tip` is what is drawn back of a pipe before a device: it belongs to a zone in which both lie.
    """

    pipes: Mapping[int, tuple[Box, ...]]
    tips: tuple[tuple[int, str, Box], ...]
    parts: Mapping[str, Box]
    runs: Mapping[str, tuple[Box, ...]]


def zone_pieces(diagram: Diagram, arrangement: Arrangement) -> ZonePieces:
    """The pieces of which the boxes of every zone are made, for whoever shades another one at each moment."""
    pipes, tips, runs = dict[int, tuple[Box, ...]](), list[tuple[int, str, Box]](), dict[str, tuple[Box, ...]]()
    for route in arrangement.routes:
        drawn_back = _inside(diagram, route, frozenset())
        boxes = tuple(_round(a, b) for way in (drawn_back, route.before, route.after) for a, b in pairwise(way))
        if route.link is None:
            runs[route.joint] = (*runs.get(route.joint, ()), *boxes)
            continue
        pipes[route.link.number] = boxes
        for end, at in ((route.link.start, 0), (route.link.end, -1)):
            if route.points[at] != drawn_back[at]:
                tips.append((route.link.number, end.part, _round(route.points[at], drawn_back[at])))
    parts = {each.item.name: _grown(each.outer_box, _BESIDE_SYMBOL) for each in arrangement.placements}
    return ZonePieces(pipes, tuple(tips), parts, runs)


def is_inside(diagram: Diagram, name: str, ports: frozenset[End]) -> bool:
    """Whether all pipes of an item lie in a zone, given by its ports."""
    links = diagram.links_at[name]
    return bool(links) and all(diagram.origin(link.near(name)) in ports for link in links)


def _inside(diagram: Diagram, route: Route, ports: frozenset[End]) -> list[Point]:
    """The points of a route, drawn back from a device that closes the zone."""
    points = list(route.points)
    if route.link is None:
        return points
    for end, at, to in ((route.link.start, 0, 1), (route.link.end, -1, -2)):
        if not diagram.items[end.part].symbol.is_joint and not is_inside(diagram, end.part, ports):
            points[at] = _toward(points[at], points[to], _BESIDE_PIPE + _STAND_BACK)
    return points


def _toward(point: Point, other: Point, by: float) -> Point:
    """A point moved towards another, at most all the way."""
    distance = abs(point[0] - other[0]) + abs(point[1] - other[1])
    share = min(1.0, by / distance) if distance else 0.0
    return point[0] + (other[0] - point[0]) * share, point[1] + (other[1] - point[1]) * share


def _lies_in(diagram: Diagram, route: Route, ports: frozenset[End], parts: set[str]) -> bool:
    return route.joint in parts if route.link is None else diagram.origin(route.link.start) in ports


def _round(a: Point, b: Point) -> Box:
    return _grown((min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])), _BESIDE_PIPE)


def _grown(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def way_legs(arrangement: Arrangement, way: tuple[str, ...]) -> list[tuple[Point, ...]]:
    """The pipes of a way, one after the other, each from part to part."""
    return [_step(arrangement, here, there) for here, there in pairwise(way)]


def way_boxes(arrangement: Arrangement, ways: Sequence[tuple[str, ...]]) -> list[Box]:
    """Boxes round the pipes of ways, for what should not be written on their band."""
    return [_round(a, b) for way in ways for leg in way_legs(arrangement, way) for a, b in pairwise(leg)]


def _step(arrangement: Arrangement, here: str, there: str) -> tuple[Point, ...]:
    route = arrangement.between.get(frozenset((here, there)))
    if route is None or route.link is None:
        return ()
    return route.whole if route.link.start.part == here else route.whole[::-1]
