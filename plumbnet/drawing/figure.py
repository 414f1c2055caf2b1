"""A schematic to a figure at its natural size or on a sheet of paper."""

from typing import Final, Literal, get_args

from matplotlib.axes import Axes
from matplotlib.figure import Figure

from plumbnet.drawing.ink import (
    SMALLEST_SCALE,
    Composition,
    DrawingSheet,
    PaperSize,
    Pen,
    SheetName,
    composition,
    draw_sheet,
    paint_composition,
    paper_for,
    paper_named,
    sheet_for,
)
from plumbnet.drawing.items import Schematic
from plumbnet.drawing.palette import Palette

_POINTS_PER_INCH = 72.0
_TABLE = 1.01 * 297.0 * 420.0 * (_POINTS_PER_INCH / 25.4) ** 2


Sheet = SheetName | Literal["natural", "smallest"]
"""What a schematic is drawn on: a sheet by its name, paper of its own size, the smallest ISO sheet it reads well on."""
SHEETS: Final[tuple[Sheet, ...]] = ("natural", "smallest", *get_args(SheetName))
_PAIRS = 2


def schematic_figure(schematic: Schematic, palette: Palette, sheet: Sheet = "natural") -> Figure:
    """A figure of a schematic on a sheet.

    A riser diagram that would be drawn there at less than 0.85 of its size is drawn with even two alike as one, where
    that makes it larger.
    """
    composed = composition(schematic)
    page = sheet_for(composed, schematic)
    paper = _paper(page, sheet)
    if composed.marks and sheet != "natural" and _is_small(paper):
        fewer = composition(schematic, _PAIRS)
        other = sheet_for(fewer, schematic)
        on_other = _paper(other, sheet)
        if (on_other.area, -on_other.scale) < (paper.area, -paper.scale):
            composed, page, paper = fewer, other, on_other
    size = (paper.width / _POINTS_PER_INCH, paper.height / _POINTS_PER_INCH)
    figure = Figure(size, facecolor=palette.ground)
    _fill(figure.add_axes((0.0, 0.0, 1.0, 1.0)), composed, page, palette=palette, paper=paper)
    return figure


def _paper(page: DrawingSheet, sheet: Sheet) -> PaperSize:
    match sheet:
        case "natural":
            return PaperSize.natural(page.box)
        case "smallest":
            return paper_for(page.box)
        case name:
            return paper_named(page.box, name)


def _is_small(paper: PaperSize) -> bool:
    """Whether a drawing is small on its paper, or its paper is larger than what lies on a table (A3)."""
    return paper.scale < SMALLEST_SCALE or paper.area > _TABLE


def _fill(axes: Axes, composed: Composition, sheet: DrawingSheet, *, palette: Palette, paper: PaperSize) -> None:
    left, top, right, bottom = sheet.box
    more_x = (paper.width / paper.scale - (right - left)) / 2
    more_y = (paper.height / paper.scale - (bottom - top)) / 2
    axes.set_xlim(left - more_x, right + more_x)
    axes.set_ylim(bottom + more_y, top - more_y)
    axes.axis("off")
    pen = Pen(palette, paper.scale)
    paint_composition(axes, composed, pen)
    draw_sheet(axes, sheet, pen)
