"""Marks of a riser diagram to shapes: floor lines, sheaves of cards with their counts, broken risers."""

from collections.abc import Iterator, Sequence

from matplotlib.artist import Artist

from plumbnet.drawing.ink.pen import Pen, filled, line, text
from plumbnet.drawing.lettering import LEADING
from plumbnet.drawing.riser import COUNT_SIZE, LEVEL_SIZE, SHEAF, BreakMark, CaptionMark, CardMark, FloorMark, RiserMark
from plumbnet.drawing.symbols import Point

_FINE = 0.45
_CARD = 0.7
_WING = 5.0


def under_marks(mark: RiserMark, pen: Pen) -> Iterator[Artist]:
    """What lies under the piping: lines of floors, the cards themselves, words at the left of a break."""
    ink, faint = pen.palette.ink, pen.palette.faint
    size = LEVEL_SIZE * pen.scale
    match mark:
        case FloorMark(left, right, y, words):
            yield line([(left, y), (right, y)], faint, _FINE, scale=pen.scale)
            yield text((left + 2.0, y - 5.0), words, size, colour=faint, across="left")
        case CardMark((left, top, right, foot)):
            for out in (SHEAF, SHEAF / 2, 0.0):
                points = [(left + out, top - out), (right + out, top - out), (right + out, foot - out)]
                points += [(left + out, foot - out), (left + out, top - out)]
                yield filled(points, pen.palette.ground)
                yield line(points, faint if out else ink, _CARD, scale=pen.scale)
        case BreakMark(left, y, _, (above, below)):
            yield text((left + 2.0, y - 4.0), above, size, colour=faint, across="left")
            yield text((left + 2.0, y + 4.0), below, size, colour=faint, across="left")


def over_marks(mark: RiserMark, pen: Pen) -> Iterator[Artist]:
    """What lies over the piping: counts with the names beside them, the strokes that break risers."""
    match mark:
        case CardMark(_, count, names):
            x, y = mark.at_count
            yield text((x, y), count, COUNT_SIZE * pen.scale, colour=pen.palette.ink, across="right", is_bold=True)
            yield from _lines(mark.first_name, names, pen)
        case CaptionMark(left, y, lines):
            yield from _lines((left, y - (len(lines) - 1) * LEVEL_SIZE * LEADING), lines, pen)
        case BreakMark(_, y, xs, _):
            for x in xs:
                yield from _broken(x, y, pen)
        case _:
            return


def _lines(first: Point, lines: Sequence[str], pen: Pen) -> Iterator[Artist]:
    """Lines of names, the first with its middle at a height."""
    for number, words in enumerate(lines):
        at = (first[0], first[1] + number * LEVEL_SIZE * LEADING)
        yield text(at, words, LEVEL_SIZE * pen.scale, colour=pen.palette.faint, across="left")


def _broken(x: float, y: float, pen: Pen) -> Iterator[Artist]:
    """A gap between two slanting strokes."""
    corners = [(x - _WING, y + 5.0), (x + _WING, y + 1.0), (x + _WING, y - 5.0), (x - _WING, y - 1.0)]
    yield filled(corners, pen.palette.ground)
    for rise in (5.0, -1.0):
        yield line([(x - _WING, y + rise), (x + _WING, y + rise - 4.0)], pen.palette.ink, 0.8, scale=pen.scale)
