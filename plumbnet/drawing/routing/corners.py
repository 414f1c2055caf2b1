"""Points of pipes: where joints have their dots, and lines without needless points."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from plumbnet.drawing.routing.placement import Route
from plumbnet.drawing.symbols import Point


def dots(routes: Sequence[Route], spots: Sequence[Point]) -> tuple[Point, ...]:
    """Where at least three pipes of a joint meet; its first spot where there is no such place."""
    ends = [end for route in routes for end in (route.points[0], route.points[-1])]
    segments = [pair for route in routes for pair in pairwise(route.points)]
    met = [point for point in dict.fromkeys([*spots, *ends]) if len(_directions(point, segments)) > _CORNER]
    return tuple(met) or (spots[0],)


def _directions(point: Point, segments: Iterable[tuple[Point, Point]]) -> set[tuple[int, int]]:
    x, y = point
    found: set[tuple[int, int]] = set()
    for (x1, y1), (x2, y2) in segments:
        if min(x1, x2) - _SAME <= x <= max(x1, x2) + _SAME and min(y1, y2) - _SAME <= y <= max(y1, y2) + _SAME:
            for to_x, to_y in ((x1, y1), (x2, y2)):
                step = (_sign(to_x - x), _sign(to_y - y))
                if step != (0, 0):
                    found.add(step)
    return found


_CORNER = 2
_SAME = 0.05


def _sign(value: float) -> int:
    return 0 if abs(value) <= _SAME else 1 if value > 0.0 else -1


def simple(points: Iterable[Point]) -> tuple[Point, ...]:
    """The points without those that stand on the straight line between their neighbours."""
    kept: list[Point] = []
    for point in points:
        if kept and abs(kept[-1][0] - point[0]) < _SAME and abs(kept[-1][1] - point[1]) < _SAME:
            continue
        while len(kept) > 1 and any(
            abs(kept[-2][axis] - kept[-1][axis]) < _SAME and abs(kept[-1][axis] - point[axis]) < _SAME
            for axis in (0, 1)
        ):
            kept.pop()
        kept.append(point)
    return tuple(kept)
