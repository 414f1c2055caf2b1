"""A schematic to a figure at its natural size or on a sheet of paper."""

from matplotlib.axes import Axes
from matplotlib.figure import Figure

from plumbnet.drawing.ink import (
    Composition,
    DrawingSheet,
    PaperSize,
    Pen,
    composition,
    draw_sheet,
    paint_composition,
    paper_for,
    sheet_for,
)
from plumbnet.drawing.items import Schematic
from plumbnet.drawing.palette import Palette

_POINTS_PER_INCH = 72.0


def schematic_figure(schematic: Schematic, palette: Palette, *, on_paper: bool = False) -> Figure:
    """A figure at its natural size, or on the smallest sheet the schematic reads well on."""
    composed = composition(schematic)
    sheet = sheet_for(composed, schematic)
    paper = paper_for(sheet.box) if on_paper else PaperSize.natural(sheet.box)
    size = (paper.width / _POINTS_PER_INCH, paper.height / _POINTS_PER_INCH)
    figure = Figure(size, facecolor=palette.ground)
    _fill(figure.add_axes((0.0, 0.0, 1.0, 1.0)), composed, sheet, palette=palette, paper=paper)
    return figure


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
