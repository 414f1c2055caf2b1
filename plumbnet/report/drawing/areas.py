"""What of the piping lies in a shaded zone, and the way out as one line across symbols."""

from collections.abc import Mapping, Sequence
from itertools import pairwise

from plumbnet.layout.system import End
from plumbnet.report.drawing.model import Model
from plumbnet.report.drawing.places import Box, Placed, Route
from plumbnet.report.drawing.remarks import Shaded
from plumbnet.report.drawing.symbol import Point

_BESIDE_PIPE = 6.0
_BESIDE_SYMBOL = 4.0
_BESIDE_WORDS = 2.0
_STAND_BACK = 6.0


def zone_boxes(model: Model, placed: Placed, zone: Shaded, names: Mapping[str, Box]) -> list[Box]:
    """Boxes round all pipes of a zone, round the parts that lie in it whole, and round their words.

    `names` are the boxes of the names of joints.
    """
    parts = {end.part for end in zone.ports}
    boxes: list[Box] = []
    for route in placed.routes:
        if _lies_in(model, route, zone.ports, parts):
            points = _inside(model, route, zone.ports)
            boxes += [_round(a, b) for way in (points, route.before, route.after) for a, b in pairwise(way)]
    for body in placed.bodies:
        if is_inside(model, body.item.name, zone.ports):
            boxes.append(_grown(body.outer_box, _BESIDE_SYMBOL))
            if body.item.words:
                boxes.append(_grown(body.words_box, _BESIDE_WORDS))
    return boxes + [_grown(box, _BESIDE_WORDS) for name, box in names.items() if name in parts]


def is_inside(model: Model, name: str, ports: frozenset[End]) -> bool:
    """Whether all pipes of an item lie in a zone, given by its ports."""
    links = model.links_at[name]
    return bool(links) and all(model.origin(link.near(name)) in ports for link in links)


def _inside(model: Model, route: Route, ports: frozenset[End]) -> list[Point]:
    """The points of a route, drawn back from a device that closes the zone."""
    points = list(route.points)
    if route.link is None:
        return points
    for end, at, to in ((route.link.start, 0, 1), (route.link.end, -1, -2)):
        if not model.items[end.part].symbol.is_joint and not is_inside(model, end.part, ports):
            points[at] = _toward(points[at], points[to], _BESIDE_PIPE + _STAND_BACK)
    return points


def _toward(point: Point, other: Point, by: float) -> Point:
    """A point moved towards another, at most all the way."""
    distance = abs(point[0] - other[0]) + abs(point[1] - other[1])
    share = min(1.0, by / distance) if distance else 0.0
    return point[0] + (other[0] - point[0]) * share, point[1] + (other[1] - point[1]) * share


def _lies_in(model: Model, route: Route, ports: frozenset[End], parts: set[str]) -> bool:
    return route.joint in parts if route.link is None else model.origin(route.link.start) in ports


def _round(a: Point, b: Point) -> Box:
    return _grown((min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])), _BESIDE_PIPE)


def _grown(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def way_legs(placed: Placed, way: tuple[str, ...]) -> list[tuple[Point, ...]]:
    """The pipes of a way, one after the other, each from part to part."""
    return [_step(placed, here, there) for here, there in pairwise(way)]


def way_boxes(placed: Placed, ways: Sequence[tuple[str, ...]]) -> list[Box]:
    """Boxes round the pipes of ways, for what should not be written on their band."""
    return [_round(a, b) for way in ways for leg in way_legs(placed, way) for a, b in pairwise(leg)]


def _step(placed: Placed, here: str, there: str) -> tuple[Point, ...]:
    route = placed.between.get(frozenset((here, there)))
    if route is None or route.link is None:
        return ()
    return route.whole if route.link.start.part == here else route.whole[::-1]
