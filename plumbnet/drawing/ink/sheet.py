"""The sheet round a drawing: its title, legend, title block and caution."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from matplotlib.artist import Artist
from matplotlib.axes import Axes

from plumbnet.drawing.ink.legend import LEGEND_SIZE, SAMPLE, LegendEntry, entries
from plumbnet.drawing.ink.pen import Group, Pen, add_group, line, text
from plumbnet.drawing.ink.sheet_composition import Composition
from plumbnet.drawing.items import BlockRow, LegendWords, Schematic
from plumbnet.drawing.lettering import shortened, width
from plumbnet.drawing.riser import FreePlaces
from plumbnet.drawing.routing import Box
from plumbnet.drawing.symbols import Point

PAD = 18.0
"""Between the drawing and the edge of the sheet."""
_TITLE = 10.0
_SMALL = 6.5
_ROW = 11.0
_NARROWEST = 600.0
_GAP = 16.0
_MOST_COLUMNS = 8
_SHEET = 0.5


def extent(composition: Composition) -> Box:
    """The box of all symbols, words, pipes and shaded areas."""
    arrangement = composition.arrangement
    boxes = [box for placement in arrangement.placements for box in (placement.outer_box, placement.words_box)]
    points = [point for route in arrangement.routes for point in route.points]
    points += [dot for joint in arrangement.junctions for dot in joint.dots]
    boxes += [(x, y, x, y) for x, y in points]
    boxes += [*composition.names.values(), *(area.tag_box for area in composition.areas)]
    boxes += [(a - 4.0, b - 4.0, c + 4.0, d + 4.0) for area in composition.areas for a, b, c, d in area.boxes]
    boxes += [box for mark in composition.marks for box in (mark.extent, *mark.boxes())]
    if not boxes:
        return 0.0, 0.0, 0.0, 0.0
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


@dataclass(frozen=True, slots=True)
class DrawingSheet:
    """The sheet: its whole box, and what stands on it round the drawing."""

    box: Box
    title: str
    columns: tuple[tuple[LegendEntry, ...], ...]
    rows: tuple[BlockRow, ...]
    legend_at: Point
    """Upper left corner of the legend."""
    block_at: Point
    """Upper left corner of the title block."""
    cautions: tuple[str, ...]


def sheet_for(composition: Composition, schematic: Schematic) -> DrawingSheet:
    """The sheet for what a schematic has come to: legend and title block below it, or where it leaves room."""
    return _furnished(composition, schematic) if composition.marks else _plain_sheet(composition, schematic)


def _plain_sheet(composition: Composition, schematic: Schematic) -> DrawingSheet:
    left, top, right, bottom = extent(composition)
    title, block = schematic.title, schematic.block
    least = max(_NARROWEST, width(title, _TITLE, bold=True))
    spare = max(0.0, least - (right - left)) / 2
    left, right = left - spare - PAD, right + spare + PAD
    room = right - left - 2 * PAD - block_width(block) - _GAP
    columns = _columns(entries(composition, schematic.legend), room)
    height = max(_height(columns), len(block) * _ROW)
    cautions = tuple(_wrapped(schematic.caution, right - left - 2 * PAD))
    foot = bottom + PAD
    end = foot + height + 8.0 + len(cautions) * _SMALL * 1.3 + PAD / 2
    box = (left, top - PAD - 2 * _TITLE, right, end)
    block_at = (right - PAD - block_width(block), foot)
    return DrawingSheet(box, title, columns, block, (left + PAD, foot), block_at, cautions)


def _furnished(composition: Composition, schematic: Schematic) -> DrawingSheet:
    """The sheet of a riser diagram: title block and legend in the topmost places that are free."""
    plain = _plain_sheet(composition, schematic)
    left, top, right, bottom = extent(composition)
    left, right = plain.box[0] + PAD, plain.box[2] - PAD
    places = FreePlaces((left, top, right, bottom), _covered(composition))
    block_at = places.first(block_width(schematic.block), len(schematic.block) * _ROW)
    if block_at is not None:
        wide, high = block_width(schematic.block), len(schematic.block) * _ROW
        places.take((*block_at, block_at[0] + wide, block_at[1] + high))
    found = list(_legend_places(places, entries(composition, schematic.legend)))
    legend_at, columns = min(found, key=lambda each: each[0][1]) if found else (plain.legend_at, plain.columns)
    height = 0.0
    if block_at is None:
        block_at, height = plain.block_at, len(schematic.block) * _ROW
    if not found:
        height = max(height, _height(columns))
    end = bottom + PAD + height + 8.0 + len(plain.cautions) * _SMALL * 1.3 + PAD / 2
    box = (plain.box[0], plain.box[1], plain.box[2], end)
    return replace(plain, box=box, columns=columns, legend_at=legend_at, block_at=block_at)


def _legend_places(
    places: FreePlaces, told: Sequence[LegendEntry]
) -> Iterator[tuple[Point, tuple[tuple[LegendEntry, ...], ...]]]:
    """Where the legend finds room, in one to eight columns."""
    for count in range(1, _MOST_COLUMNS + 1):
        room = sum(entry.width + _GAP for entry in told) * count / max(1, len(told)) + 5 * _GAP
        columns = _columns(told, room)
        wide = sum(max(entry.width for entry in column) + _GAP for column in columns)
        at = places.first(wide, _height(columns))
        if at is not None:
            yield at, columns


def _covered(composition: Composition) -> Iterator[Box]:
    """All on which neither legend nor title block may lie."""
    arrangement = composition.arrangement
    for placement in arrangement.placements:
        yield placement.outer_box
        yield placement.words_box
    for _, a, b in arrangement.segments:
        yield min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])
    yield from composition.names.values()
    for area in composition.areas:
        yield area.tag_box
        yield from area.boxes
    for mark in composition.marks:
        yield mark.extent
        yield from mark.boxes()


def block_width(block: Sequence[BlockRow]) -> float:
    """Width of the title block."""
    return _names_width(block) + max(width(shortened(row.words), _SMALL, bold=True) for row in block) + 14.0


def _names_width(block: Sequence[BlockRow]) -> float:
    return max(width(shortened(row.name, 24), _SMALL) for row in block) + 8.0


@dataclass(frozen=True, slots=True)
class PlacedLegend:
    """A legend in columns by itself, and its height."""

    columns: tuple[tuple[LegendEntry, ...], ...]
    height: float


def legend_for(composition: Composition, words: LegendWords, room: float) -> PlacedLegend:
    """The legend of a composition by itself, in columns that fit into a width."""
    columns = _columns(entries(composition, words), room)
    return PlacedLegend(columns, _height(columns))


def draw_legend(axes: Axes, legend: PlacedLegend, pen: Pen) -> None:
    """Put a legend on paper, its upper left corner at the origin."""
    add_group(axes, Group("legend", list(_legend(legend.columns, (0.0, 0.0), pen)), 6.0))


def _columns(entries: Sequence[LegendEntry], room: float) -> tuple[tuple[LegendEntry, ...], ...]:
    """The legend in as many columns as the room allows, filled evenly from the top down."""
    for count in range(len(entries), 0, -1):
        share = sum(entry.height for entry in entries) / count
        columns: list[list[LegendEntry]] = [[]]
        filled = 0.0
        for entry in entries:
            if columns[-1] and filled + entry.height / 2 > share and len(columns) < count:
                columns.append([])
                filled = 0.0
            columns[-1].append(entry)
            filled += entry.height
        wide = sum(max(entry.width for entry in column) + _GAP for column in columns)
        if wide <= room and (count == 1 or _height(columns) >= 3 * _ROW):
            return tuple(tuple(column) for column in columns)
    return (tuple(entries),) if entries else ()


def _height(columns: Sequence[Sequence[LegendEntry]]) -> float:
    return max((sum(entry.height for entry in column) for column in columns), default=0.0)


def _wrapped(words: str, room: float) -> Iterator[str]:
    """Sentences, broken where they are wider than the room."""
    shown = ""
    for word in words.split():
        if shown and width(f"{shown} {word}", _SMALL) > room:
            yield shown
            shown = word
        else:
            shown = f"{shown} {word}".lstrip()
    yield shown


def draw_sheet(axes: Axes, page: DrawingSheet, pen: Pen) -> None:
    """Put title, legend, title block and caution on the sheet."""
    left, top, _, bottom = page.box
    title = text(
        (left + PAD, top + PAD), page.title, _TITLE * pen.scale, colour=pen.palette.ink, across="left", is_bold=True
    )
    add_group(axes, Group("title", [title], 6.0))
    add_group(axes, Group("legend", list(_legend(page.columns, page.legend_at, pen)), 6.0))
    add_group(axes, Group("title-block", list(_block(page, pen)), 6.0))
    first = bottom - PAD / 2 - (len(page.cautions) - 0.5) * _SMALL * 1.3
    cautions = [
        text((left + PAD, first + n * _SMALL * 1.3), words, _SMALL * pen.scale, colour=pen.palette.faint, across="left")
        for n, words in enumerate(page.cautions)
    ]
    add_group(axes, Group("caution", cautions, 6.0))


def _legend(columns: Sequence[Sequence[LegendEntry]], at: Point, pen: Pen) -> Iterator[Artist]:
    x, top = at
    for column in columns:
        y = top
        for entry in column:
            middle = y + entry.height / 2
            yield from entry.sample(x, middle, pen)
            beside = (x + SAMPLE + 5.0, middle)
            yield text(beside, entry.words, LEGEND_SIZE * pen.scale, colour=pen.palette.ink, across="left")
            y += entry.height
        x += max(entry.width for entry in column) + _GAP


def _block(page: DrawingSheet, pen: Pen) -> Iterator[Artist]:
    left, top = page.block_at
    right = left + block_width(page.rows)
    bar = left + _names_width(page.rows)
    foot = top + len(page.rows) * _ROW
    corners = [(left, top), (right, top), (right, foot), (left, foot), (left, top)]
    yield line(corners, pen.palette.ink, 0.8, scale=pen.scale)
    yield line([(bar, top), (bar, foot)], pen.palette.faint, _SHEET, scale=pen.scale)
    for number, row in enumerate(page.rows):
        y = top + (number + 0.5) * _ROW
        if number:
            yield line([(left, y - _ROW / 2), (right, y - _ROW / 2)], pen.palette.faint, _SHEET, scale=pen.scale)
        colour = pen.palette.ink if row.tone is None else pen.palette.shades[row.tone].edge
        size = _SMALL * pen.scale
        yield text((left + 4.0, y), shortened(row.name, 24), size, colour=pen.palette.faint, across="left")
        yield text(
            (bar + 4.0, y), shortened(row.words), size, colour=colour, across="left", is_bold=row.tone is not None
        )
