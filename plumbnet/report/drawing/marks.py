"""Shapes of what is marked on a drawing: shaded zones, ways out, rings, dots, symbols with their words."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from matplotlib.artist import Artist
from matplotlib.patches import PathPatch
from matplotlib.path import Path

from plumbnet.report.drawing.ink import Across, Cut, Pen, filled, line, outlines, text
from plumbnet.report.drawing.lettering import LEADING, SIZE
from plumbnet.report.drawing.places import Body, Box, Joint
from plumbnet.report.drawing.symbol import SYMBOLS, Point
from plumbnet.report.drawing.words import JOINT_SIZE, TAG_SIZE
from plumbnet.report.drawing.zones import hatching
from plumbnet.report.palette import Service
from plumbnet.rules.facts import Verdict

_BAND = 8.0
"""Width of the band that marks a way out."""
_EVERY = 46.0
"""Between two arrowheads of a way."""
_STOUT = 2.0
_OUTLINES = {Verdict.TRAPPED: 1.0, Verdict.SEALED: 2.0}
_DASH = (6.0, 1.8)


def zone_marks(path: Path, verdict: Verdict, pen: Pen) -> Iterator[Artist]:
    """Fill, hatch and outline of an area."""
    shade = pen.palette.verdicts[verdict]
    extents = path.get_extents()
    box = (float(extents.x0), float(extents.y0), float(extents.x1), float(extents.y1))
    yield PathPatch(path, facecolor=shade.fill, edgecolor="none", linewidth=0.0)
    yield Cut(hatching(box, shade.hatch), path, shade.edge, 0.35 * pen.scale)
    width = _OUTLINES[verdict]
    edge = PathPatch(path, facecolor="none", edgecolor=shade.edge, linewidth=width * pen.scale, joinstyle="round")
    # In black a dashed outline would be taken for a return pipe.
    is_dashed = verdict is Verdict.TRAPPED and shade.edge != pen.palette.services[Service.RETURN].colour
    edge.set_linestyle((0.0, _DASH) if is_dashed else "solid")
    yield edge


def tag_marks(spot: Box, words: str, verdict: Verdict, pen: Pen) -> Iterator[Artist]:
    """Words in a frame."""
    left, top, right, bottom = spot
    edge = pen.palette.verdicts[verdict].edge
    corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
    yield filled(corners, pen.palette.ground)
    yield line(corners, edge, 0.9, scale=pen.scale)
    yield text(((left + right) / 2, (top + bottom) / 2), words, TAG_SIZE * pen.scale, colour=edge, is_bold=True)


def way_marks(legs: Sequence[Sequence[Point]], pen: Pen) -> Iterator[Artist]:
    """A band along a way and across the symbols between its legs, with arrowheads on its pipes."""
    points = [point for leg in legs for point in leg]
    yield line(points, pen.palette.way, _BAND, scale=pen.scale)
    for leg in legs:
        for start, end in pairwise(leg):
            yield from _arrowheads(start, end, pen.palette.verdicts[Verdict.OPEN].edge)


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
    yield PathPatch(path, facecolor="none", edgecolor=pen.palette.stop, linewidth=_STOUT * pen.scale)


def dot_marks(at: Point, pen: Pen) -> Iterator[Artist]:
    """A dot where pipes meet."""
    x, y = at
    yield from outlines(SYMBOLS["joint"].marks, lambda point: (x + point[0], y + point[1]), pen)


def joint_marks(joint: Joint, words: Box | None, behind: str | None, pen: Pen) -> Iterator[Artist]:
    """The dots of a joint, and its name where that has found room."""
    for dot in joint.dots:
        yield from dot_marks(dot, pen)
    if words is not None:
        left, top, right, bottom = words
        size = JOINT_SIZE * pen.scale
        middle = ((left + right) / 2, (top + bottom) / 2)
        yield text(middle, "\n".join(joint.item.lines), size, colour=pen.palette.faint, behind=behind)


def body_marks(body: Body, behind: str | None, pen: Pen) -> Iterator[Artist]:
    """The symbol of an item, the ring round what stops the water, and its words; `behind` is the colour they lie on."""
    symbol = body.item.symbol
    yield from outlines(symbol.marks, body.at, pen)
    for port, side in body.joined:
        if port in symbol.leads:
            x, y = symbol.sockets[port]
            points = [body.at((side * abs(x), y)), body.at(symbol.leads[port])]
            yield line(points, pen.palette.ink, 1.2, scale=pen.scale)
    if body.item.is_ringed:
        yield from ring_marks(body.outer_box, pen)
    yield from _words(body, behind, pen)


def _words(body: Body, behind: str | None, pen: Pen) -> Iterator[Artist]:
    """The words of an item line by line, a verdict in its colour."""
    item = body.item
    if not item.words:
        return
    left, top, right, _ = body.words_box
    across: Across = ("center", "left", "right")[body.words_at_side]
    x = (left + right) / 2 if not body.words_at_side else left if body.words_at_side > 0 else right
    for number, words in enumerate(item.words):
        verdict = item.verdict if number == len(item.lines) else None
        colour = pen.palette.ink if verdict is None else pen.palette.verdicts[verdict].edge
        y = top + (number + 0.5) * SIZE * LEADING
        is_bold = verdict is not None
        yield text((x, y), words, SIZE * pen.scale, colour=colour, across=across, is_bold=is_bold, behind=behind)
