"""Shapes of what is marked on a drawing: shaded zones, ways out, rings, dots, symbols with their words."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from matplotlib.artist import Artist
from matplotlib.patches import PathPatch
from matplotlib.path import Path

from plumbnet.drawing.ink.outline import hatching
from plumbnet.drawing.ink.pen import Across, Cut, Pen, filled, line, outlines, text
from plumbnet.drawing.ink.spots import joint_size
from plumbnet.drawing.items import Shading
from plumbnet.drawing.lettering import LEADING
from plumbnet.drawing.routing import Box, Junction, Placement
from plumbnet.drawing.symbols import SYMBOLS, Point

_BAND = 8.0
"""Width of the band that marks a way out."""
_EVERY = 46.0
"""Between two arrowheads of a way."""
_STOUT = 2.0


def zone_marks(path: Path, tone: str, pen: Pen) -> Iterator[Artist]:
    """Fill, hatch and outline of an area."""
    shade = pen.palette.shades[tone]
    extents = path.get_extents()
    box = (float(extents.x0), float(extents.y0), float(extents.x1), float(extents.y1))
    yield PathPatch(path, facecolor=shade.fill, edgecolor="none", linewidth=0.0)
    yield Cut(hatching(box, shade.hatch), path, shade.edge, 0.35 * pen.scale)
    edge = PathPatch(path, facecolor="none", edgecolor=shade.edge, linewidth=shade.width * pen.scale, joinstyle="round")
    edge.set_linestyle((0.0, shade.dash) if shade.dash else "solid")
    yield edge


def tag_marks(spot: Box, shading: Shading, pen: Pen) -> Iterator[Artist]:
    """The words of a shaded zone in a frame."""
    left, top, right, bottom = spot
    edge = pen.palette.shades[shading.tone].edge
    corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
    yield filled(corners, pen.palette.ground)
    yield line(corners, edge, 0.9, scale=pen.scale)
    middle, size = ((left + right) / 2, (top + bottom) / 2), shading.letter_size * pen.scale
    yield text(middle, shading.tag, size, colour=edge, is_bold=True)


def way_marks(legs: Sequence[Sequence[Point]], pen: Pen) -> Iterator[Artist]:
    """A band along a way and across the symbols between its legs, with arrowheads on its pipes."""
    points = [point for leg in legs for point in leg]
    yield line(points, pen.palette.band, _BAND, scale=pen.scale)
    for leg in legs:
        for start, end in pairwise(leg):
            yield from _arrowheads(start, end, pen.palette.band_edge)


def _arrowheads(start: Point, end: Point, colour: str) -> Iterator[Artist]:
    (x1, y1), (x2, y2) = start, end
    length = abs(x1 - x2) + abs(y1 - y2)
    count = max(int(length / _EVERY + 0.5), int(length > _EVERY / 3))
    for at in range(count):
        ux, uy = (x2 - x1) / length, (y2 - y1) / length
        share = (at + 0.5) / count
        x, y = x1 + (x2 - x1) * share, y1 + (y2 - y1) * share
        half = _BAND / 2 + 1.0
        wings = [(x - ux * 3 + s * uy * half, y - uy * 3 - s * ux * half) for s in (1.0, -1.0)]
        yield filled([(x + ux * 5, y + uy * 5), *wings], colour)


def ring_marks(box: Box, pen: Pen) -> Iterator[Artist]:
    """A heavy ring with rounded corners just inside a box."""
    left, top, right, bottom = (edge + inward for edge, inward in zip(box, (1.2, 1.2, -1.2, -1.2), strict=True))
    r = min(6.0, (right - left) / 2, (bottom - top) / 2)
    vertices = [
        (left + r, top), (right - r, top), (right, top), (right, top + r), (right, bottom - r), (right, bottom),
        (right - r, bottom), (left + r, bottom), (left, bottom), (left, bottom - r), (left, top + r), (left, top),
        (left + r, top),
    ]  # fmt: skip
    codes = [Path.MOVETO, *[Path.LINETO, Path.CURVE3, Path.CURVE3] * 4]
    path = Path(vertices, codes)
    yield PathPatch(path, facecolor="none", edgecolor=pen.palette.ring, linewidth=_STOUT * pen.scale)


def dot_marks(at: Point, pen: Pen) -> Iterator[Artist]:
    """A dot where pipes meet."""
    x, y = at
    yield from outlines(SYMBOLS["joint"].marks, lambda point: (x + point[0], y + point[1]), pen)


def junction_marks(joint: Junction, words: Box | None, behind: str | None, pen: Pen) -> Iterator[Artist]:
    """The dots of a joint, and its name where that has found room."""
    for dot in joint.dots:
        yield from dot_marks(dot, pen)
    if words is not None:
        left, top, right, bottom = words
        size = joint_size(joint.item) * pen.scale
        middle = ((left + right) / 2, (top + bottom) / 2)
        yield text(middle, "\n".join(joint.item.lines), size, colour=pen.palette.faint, behind=behind)


def symbol_marks(placement: Placement, behind: str | None, pen: Pen) -> Iterator[Artist]:
    """The symbol of an item, the ring round what stops the water, and its words; `behind` is the colour they lie on."""
    symbol = placement.item.symbol
    yield from outlines(symbol.marks, placement.at, pen)
    for port, side in placement.joined:
        if port in symbol.leads:
            x, y = symbol.sockets[port]
            points = [placement.at((side * abs(x), y)), placement.at(symbol.leads[port])]
            yield line(points, pen.palette.ink, 1.2, scale=pen.scale)
    if placement.item.is_ringed:
        yield from ring_marks(placement.ring_box, pen)
    yield from _words(placement, behind, pen)


def _words(placement: Placement, behind: str | None, pen: Pen) -> Iterator[Artist]:
    """The words of an item line by line, the last in its tone where it has one."""
    item = placement.item
    if not item.lines:
        return
    left, top, right, _ = placement.words_box
    across: Across = ("center", "left", "right")[placement.words_at_side]
    x = (left + right) / 2 if not placement.words_at_side else left if placement.words_at_side > 0 else right
    for number, words in enumerate(item.lines):
        tone = item.tone if number == len(item.lines) - 1 else None
        colour = pen.palette.ink if tone is None else pen.palette.shades[tone].edge
        y = top + (number + 0.5) * item.letter_size * LEADING
        size, is_bold = item.letter_size * pen.scale, tone is not None
        yield text((x, y), words, size, colour=colour, across=across, is_bold=is_bold, behind=behind)
