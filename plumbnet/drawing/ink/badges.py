"""Letters at items and on pipes to badges in their places, and to their shapes: a dark field, a frame round an item."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from matplotlib.artist import Artist

from plumbnet.drawing.ink.pen import Pen, filled, line, text
from plumbnet.drawing.ink.spots import Occupancy
from plumbnet.drawing.items import Letters
from plumbnet.drawing.lettering import width
from plumbnet.drawing.routing import Arrangement, Box, Route
from plumbnet.drawing.symbols import Point

_SIZE = 7.5
_HIGH = 10.0
_BESIDE = 3.0
"""Between what a letter adds to a field and the field's edge."""
_INSIDE = 1.0
"""From the edge of what is drawn of an item to its frame."""
_STOUT = 1.6
_DOT = 6.0
"""From the middle of a joint to its frame."""


@dataclass(frozen=True, slots=True)
class Badge:
    """Letters, the box of their field, and the frame round the item that they stand for; None on a pipe."""

    letters: str
    box: Box
    frame: Box | None = None


def badges(arrangement: Arrangement, letters: Letters, occupancy: Occupancy) -> Iterator[Badge]:
    """The badges in their places, where they cover least; items in the order of the drawing, then pipes."""
    for placement in arrangement.placements:
        if placement.item.name in letters.items:
            frame = _grown(placement.outer_box, -_INSIDE)
            yield _badge(letters.items[placement.item.name], list(_corners(frame)), occupancy, frame)
    for joint in arrangement.junctions:
        if joint.item.name in letters.items:
            frame = _grown((*joint.dots[0], *joint.dots[0]), _DOT)
            yield _badge(letters.items[joint.item.name], list(_corners(frame)), occupancy, frame)
    for route in arrangement.routes:
        if route.link is not None and route.link.number in letters.links:
            yield _badge(letters.links[route.link.number], list(_along(route)), occupancy, None)


def _badge(letters: str, middles: list[Point], occupancy: Occupancy, frame: Box | None) -> Badge:
    spots = [_field(middle, letters) for middle in middles]
    if frame is None:  # a badge on a pipe lies over it, and over nothing else
        box = spots[0]
    else:
        box, _ = occupancy.best(spots, [0.01 * at for at in range(len(spots))])
    occupancy.take(box)
    return Badge(letters, box, frame)


def _field(middle: Point, letters: str) -> Box:
    half = max(_HIGH, width(letters, _SIZE, bold=True) + 2.0 * _BESIDE) / 2
    return middle[0] - half, middle[1] - _HIGH / 2, middle[0] + half, middle[1] + _HIGH / 2


def _corners(frame: Box) -> Iterator[Point]:
    """Corners of a frame, then the middles of its upper and lower edge."""
    left, top, right, bottom = frame
    middle = (left + right) / 2
    yield from ((left, top), (right, top), (right, bottom), (left, bottom), (middle, top), (middle, bottom))


def _along(route: Route) -> Iterator[Point]:
    """The middle of the longest straight of a pipe."""
    (x1, y1), (x2, y2) = max(pairwise(route.points), key=lambda ends: _length(*ends))
    yield (x1 + x2) / 2, (y1 + y2) / 2


def _length(a: Point, b: Point) -> float:
    return abs(a[0] - b[0]) + abs(a[1] - b[1])


def _grown(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def badge_marks(badge: Badge, pen: Pen) -> Iterator[Artist]:
    """The frame of a badge, where it has one, and its letters on a field."""
    if badge.frame is not None:
        left, top, right, bottom = badge.frame
        corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
        yield line(corners, pen.palette.ink, _STOUT, scale=pen.scale)
    left, top, right, bottom = badge.box
    yield from letter_marks(((left + right) / 2, (top + bottom) / 2), badge.letters, pen)


def letter_marks(middle: Point, letters: str, pen: Pen) -> Iterator[Artist]:
    """Letters in the colour of the ground on a field in that of ink."""
    left, top, right, bottom = _field(middle, letters)
    yield filled([(left, top), (right, top), (right, bottom), (left, bottom)], pen.palette.ink)
    yield text(middle, letters, _SIZE * pen.scale, colour=pen.palette.ground, is_bold=True)
