"""Routes to lines: a hop where one pipe passes over another, an arrow on what a pump drives back."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from itertools import pairwise

from matplotlib.artist import Artist
from matplotlib.path import Path

from plumbnet.drawing.ink.pen import Pen, filled, stroke
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing import Arrangement, Route
from plumbnet.drawing.symbols import Point

HOP = 3.4
"""Half the width of a hop."""
_BULGE = 4.6
_ARROW = 5.0
_CLEARANCE = 1.0
_SAME = 0.05
_LONG_ENOUGH = 18.0


def crossings(arrangement: Arrangement) -> dict[int, list[Point]]:
    """Where the uprights of each route pass over level pipes of others that they do not join."""
    levels = sorted(
        (a[1], min(a[0], b[0]), max(a[0], b[0]), number)
        for number, a, b in arrangement.segments
        if abs(a[1] - b[1]) < _SAME
    )
    heights = [level[0] for level in levels]
    found: dict[int, list[Point]] = {}
    for number, a, b in arrangement.segments:
        if abs(a[0] - b[0]) >= _SAME:
            continue
        top, foot = sorted((a[1], b[1]))
        for y, left, right, other in levels[
            bisect_right(heights, top + _CLEARANCE) : bisect_left(heights, foot - _CLEARANCE)
        ]:
            if other != number and left + _CLEARANCE < a[0] < right - _CLEARANCE:
                found.setdefault(number, []).append((a[0], y))
    return found


def pipe(route: Route, hops: Sequence[Point], pen: Pen) -> Iterator[Artist]:
    """The line of a route and, on a return, an arrow in its direction."""
    style = pen.palette.services[route.service]
    yield stroke(
        hopping_path(route.points, hops, gap=bool(style.dash)), style.colour, style.width, style.dash, pen.scale
    )
    if route.service is Service.RETURN and route.link is not None:
        yield from _arrow(route.points, style.colour)


def hopping_path(points: Sequence[Point], hops: Sequence[Point], *, gap: bool) -> Path:
    """The route with a bow at each hop; a dashed line is interrupted instead."""
    vertices, codes = [points[0]], [Path.MOVETO]
    for (x1, y1), (x2, y2) in pairwise(points):
        if abs(x1 - x2) < _SAME:
            down = y2 > y1
            sign = 1.0 if down else -1.0
            met = sorted(
                (y for x, y in hops if abs(x - x1) < _SAME and min(y1, y2) < y < max(y1, y2)), reverse=not down
            )
            for y in _apart(met):
                before, after = y - sign * HOP, y + sign * HOP
                vertices.append((x1, before))
                codes.append(Path.LINETO)
                if gap:
                    vertices.append((x1, after))
                    codes.append(Path.MOVETO)
                else:
                    vertices += [(x1 + _BULGE, before), (x1 + _BULGE, after), (x1, after)]
                    codes += [Path.CURVE4] * 3
        vertices.append((x2, y2))
        codes.append(Path.LINETO)
    return Path(vertices, codes)


def _apart(heights: Sequence[float]) -> Iterator[float]:
    """Heights of hops, less those that would touch the one before."""
    last: float | None = None
    for height in heights:
        if last is None or abs(height - last) > 2 * HOP + _CLEARANCE:
            last = height
            yield height


def _arrow(points: Sequence[Point], colour: str) -> Iterator[Artist]:
    """A filled arrow in the middle of the longest straight."""
    corners = arrow_corners(points)
    if corners:
        yield filled(corners, colour)


def arrow_corners(points: Sequence[Point]) -> list[Point]:
    """The corners of an arrow in the middle of the longest straight of a line; none where that is too short."""
    (x1, y1), (x2, y2) = max(pairwise(points), key=lambda ends: _length(*ends))
    length = _length((x1, y1), (x2, y2))
    if length < _LONG_ENOUGH:
        return []
    x, y, ux, uy = (x1 + x2) / 2, (y1 + y2) / 2, (x2 - x1) / length, (y2 - y1) / length
    wings = [(x - ux * 3.5 + s * uy * 3.2, y - uy * 3.5 - s * ux * 3.2) for s in (1.0, -1.0)]
    return [(x + ux * _ARROW, y + uy * _ARROW), *wings]


def _length(a: Point, b: Point) -> float:
    return abs(a[0] - b[0]) + abs(a[1] - b[1])
