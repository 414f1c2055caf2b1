"""The legend: a sample and words for every sort of line, mark and symbol that is there, and for no other."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from matplotlib.artist import Artist
from matplotlib.path import Path

from plumbnet.report.drawing.ink import Pen, line, outlines, stroke
from plumbnet.report.drawing.lettering import width
from plumbnet.report.drawing.marks import ring_marks, way_marks, zone_marks
from plumbnet.report.drawing.pipes import crossings
from plumbnet.report.drawing.places import Placed
from plumbnet.report.drawing.remarks import Remarks
from plumbnet.report.drawing.symbol import Point, Symbol
from plumbnet.report.palette import Service
from plumbnet.rules.facts import Verdict

SAMPLE = 30.0
"""Width of a sample."""
SIZE = 6.5
"""Size of the words."""
_SHARE = 0.55
"""Size of a symbol in the legend, of its size in the drawing."""
_ROW = 12.0
_SERVICES = {
    Service.COLD: "cold water",
    Service.HOT: "hot water",
    Service.MIXED: "mixed water",
    Service.RETURN: "return, and its direction",
}
_VERDICTS = {
    Verdict.TRAPPED: "trapped zone: past its limit when all is hot",
    Verdict.SEALED: "sealed zone: no relief valve in reach, danger",
}
Sample = Callable[[float, float, Pen], Iterator[Artist]]
"""Draws a sample whose left edge has its middle at a point."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A sample, the words beside it, and the height it takes."""

    sample: Sample
    words: str
    height: float

    @property
    def width(self) -> float:
        """Width of sample and words."""
        return SAMPLE + 5.0 + width(self.words, SIZE)


def entries(placed: Placed, remarks: Remarks) -> list[Entry]:
    """The legend of a drawing: lines first, then marks, then symbols in the order in which they appear."""
    symbols = {body.item.symbol.name: body.item.symbol for body in placed.bodies}
    return [*_lines(placed), *_marks(remarks), *map(_symbol, symbols.values())]


def _lines(placed: Placed) -> Iterator[Entry]:
    used = {route.service for route in placed.routes}
    yield from (Entry(_level(service), words, _ROW) for service, words in _SERVICES.items() if service in used)
    if crossings(placed):
        yield Entry(_hop, "pipes pass, not joined", _ROW + 1.0)


def _marks(remarks: Remarks) -> Iterator[Entry]:
    for verdict, words in _VERDICTS.items():
        if any(zone.verdict is verdict for zone in remarks.zones):
            yield Entry(_area(verdict), words, _ROW + 2.0)
    if remarks.stops:
        yield Entry(_ring, "stops the water on its way out", _ROW + 3.0)
    if remarks.ways:
        yield Entry(_way, "way out for growing water", _ROW + 1.0)


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


def _way(x: float, y: float, pen: Pen) -> Iterator[Artist]:
    yield from way_marks([((x, y), (x + SAMPLE, y))], pen)


def _area(verdict: Verdict) -> Sample:
    def sample(x: float, y: float, pen: Pen) -> Iterator[Artist]:
        corners = [(x, y - 5.0), (x + SAMPLE, y - 5.0), (x + SAMPLE, y + 5.0), (x, y + 5.0), (x, y - 5.0)]
        yield from zone_marks(Path(corners, closed=True), verdict, pen)

    return sample


def _symbol(symbol: Symbol) -> Entry:
    up, down = (reach * _SHARE for reach in symbol.reach)

    def sample(x: float, y: float, pen: Pen) -> Iterator[Artist]:
        middle, level = x + SAMPLE / 2, y + (up - down) / 2

        def place(point: Point) -> Point:
            return middle + point[0] * _SHARE, level + point[1] * _SHARE

        yield from outlines(symbol.marks, place, Pen(pen.palette, pen.scale * 0.75))

    return Entry(sample, symbol.words, up + down + 5.0)
