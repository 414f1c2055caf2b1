"""An arrangement to shapes of matplotlib: symbols, pipes, shaded areas, words where there is room, and the sheet."""

from plumbnet.drawing.ink.paint import paint_composition
from plumbnet.drawing.ink.paper import PaperSize, paper_for
from plumbnet.drawing.ink.pen import Cut, Group, Pen, identifier
from plumbnet.drawing.ink.sheet import DrawingSheet, draw_sheet, sheet_for
from plumbnet.drawing.ink.sheet_composition import Composition, composition

__all__ = [
    "Composition",
    "Cut",
    "DrawingSheet",
    "Group",
    "PaperSize",
    "Pen",
    "composition",
    "draw_sheet",
    "identifier",
    "paint_composition",
    "paper_for",
    "sheet_for",
]
