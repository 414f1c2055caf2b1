"""The legend: a sample and words for every sort of line, mark and symbol that is there, and for no other."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from matplotlib.artist import Artist
from matplotlib.path import Path

from plumbnet.drawing.ink.badges import letter_marks
from plumbnet.drawing.ink.marks import ring_marks, way_marks, zone_marks
from plumbnet.drawing.ink.pen import Pen, line, outlines, stroke
from plumbnet.drawing.ink.pipes import crossings
from plumbnet.drawing.ink.sheet_composition import Composition
from plumbnet.drawing.items import LegendWords
from plumbnet.drawing.lettering import width
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing import Arrangement
from plumbnet.drawing.symbols import Point, Symbol

SAMPLE = 30.0
"""Width of a sample."""
LEGEND_SIZE = 6.5
"""Size of the words."""
_SHARE = 0.55
"""Size of a symbol in the legend, of its size in the drawing."""
_ROW = 12.0
Sample = Callable[[float, float, Pen], Iterator[Artist]]
"""Draws a sample whose left edge has its middle at a point."""


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A sample, the words beside it, and the height it takes."""

    sample: Sample
    words: str
    height: float

    @property
    def width(self) -> float:
        """Width of sample and words."""
        return SAMPLE + 5.0 + width(self.words, LEGEND_SIZE)


def entries(composition: Composition, words: LegendWords) -> list[LegendEntry]:
    """The legend of a drawing: lines first, then marks, then symbols in the order in which they appear."""
    symbols = {each.item.symbol.name: each.item.symbol for each in composition.arrangement.placements}
    lines, marks = _lines(composition.arrangement, words), _marks(composition, words)
    return [*lines, *marks, *map(_symbol, symbols.values())]


def _lines(arrangement: Arrangement, words: LegendWords) -> Iterator[LegendEntry]:
    used = {route.service for route in arrangement.routes}
    for service, told in words.services.items():
        if service in used:
            yield LegendEntry(_level(service), told, _ROW)
    if crossings(arrangement):
        yield LegendEntry(_hop, "pipes pass, not joined", _ROW + 1.0)


def _marks(composition: Composition, words: LegendWords) -> Iterator[LegendEntry]:
    for tone, told in words.tones.items():
        if tone in composition.tones:
            yield LegendEntry(_area(tone), told, _ROW + 2.0)
    if any(each.item.is_ringed for each in composition.arrangement.placements):
        yield LegendEntry(_ring, words.ring, _ROW + 3.0)
    if composition.ways:
        yield LegendEntry(_band, words.band, _ROW + 1.0)
    for letter, told in words.letters.items():
        if any(letter in badge.letters for badge in composition.badges):
            yield LegendEntry(_letter(letter), told, _ROW + 2.0)


def _level(service: Service) -> Sample:
    def sample(x: float, y: float, pen: Pen) -> Iterator[Artist]:
        style = pen.palette.services[service]
        yield line([(x, y), (x + SAMPLE, y)], style.colour, style.width, style.dash, pen.scale)

    return sample


def _hop(x: float, y: float, pen: Pen) -> Iterator[Artist]:
    style, middle = pen.palette.services[Service.COLD], x + SAMPLE / 2
    yield line([(x, y), (x + SAMPLE, y)], style.colour, style.width, scale=pen.scale)
    bow = [(middle + 4.6, y - 3.4), (middle + 4.6, y + 3.4), (middle, y + 3.4)]
    codes = [Path.MOVETO, Path.LINETO, Path.CURVE4, Path.CURVE4, Path.CURVE4, Path.LINETO]
    path = Path([(middle, y - 6.0), (middle, y - 3.4), *bow, (middle, y + 6.0)], codes)
    yield stroke(path, style.colour, style.width, (), pen.scale)


def _ring(x: float, y: float, pen: Pen) -> Iterator[Artist]:
    yield from ring_marks((x + 4.0, y - 6.0, x + SAMPLE - 4.0, y + 6.0), pen)


def _band(x: float, y: float, pen: Pen) -> Iterator[Artist]:
    yield from way_marks([((x, y), (x + SAMPLE, y))], pen)


def _letter(letter: str) -> Sample:
    def sample(x: float, y: float, pen: Pen) -> Iterator[Artist]:
        yield from letter_marks((x + SAMPLE / 2, y), letter, pen)

    return sample


def _area(tone: str) -> Sample:
    def sample(x: float, y: float, pen: Pen) -> Iterator[Artist]:
        corners = [(x, y - 5.0), (x + SAMPLE, y - 5.0), (x + SAMPLE, y + 5.0), (x, y + 5.0), (x, y - 5.0)]
        yield from zone_marks(Path(corners, closed=True), tone, pen)

    return sample


def _symbol(symbol: Symbol) -> LegendEntry:
    up, down = (reach * _SHARE for reach in symbol.reach)

    def sample(x: float, y: float, pen: Pen) -> Iterator[Artist]:
        middle, level = x + SAMPLE / 2, y + (up - down) / 2

        def place(point: Point) -> Point:
            return middle + point[0] * _SHARE, level + point[1] * _SHARE

        yield from outlines(symbol.marks, place, Pen(pen.palette, pen.scale * 0.75))

    return LegendEntry(sample, symbol.words, up + down + 5.0)
