"""An arrangement moved as a whole."""

from collections.abc import Iterable
from dataclasses import replace

from plumbnet.drawing.routing import Arrangement
from plumbnet.drawing.symbols import Point


def moved(arrangement: Arrangement, dx: float, dy: float) -> Arrangement:
    """The same, so far to the right and down."""
    return Arrangement(
        tuple(replace(each, x=each.x + dx, y=each.y + dy) for each in arrangement.placements),
        tuple(replace(each, dots=moved_points(each.dots, dx, dy)) for each in arrangement.junctions),
        tuple(
            replace(
                each,
                points=moved_points(each.points, dx, dy),
                before=moved_points(each.before, dx, dy),
                after=moved_points(each.after, dx, dy),
            )
            for each in arrangement.routes
        ),
        moved_points(arrangement.forks, dx, dy),
    )


def moved_points(points: Iterable[Point], dx: float, dy: float) -> tuple[Point, ...]:
    """Points so far to the right and down."""
    return tuple((x + dx, y + dy) for x, y in points)
