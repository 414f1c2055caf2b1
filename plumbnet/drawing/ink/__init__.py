"""An arrangement to shapes of matplotlib: symbols, pipes, shaded areas, words where there is room, and the sheet."""

from plumbnet.drawing.ink.areas import ZonePieces, zone_pieces
from plumbnet.drawing.ink.paint import paint_composition
from plumbnet.drawing.ink.paper import PaperSize, paper_for
from plumbnet.drawing.ink.pen import Cut, Group, Pen, identifier
from plumbnet.drawing.ink.pipes import arrow_corners, crossings, hopping_path
from plumbnet.drawing.ink.sheet import DrawingSheet, draw_sheet, sheet_for
from plumbnet.drawing.ink.sheet_composition import Composition, composition

__all__ = [
    "Composition",
    "Cut",
    "DrawingSheet",
    "Group",
    "PaperSize",
    "Pen",
    "ZonePieces",
    "arrow_corners",
    "composition",
    "crossings",
    "draw_sheet",
    "hopping_path",
    "identifier",
    "paint_composition",
    "paper_for",
    "sheet_for",
    "zone_pieces",
]
