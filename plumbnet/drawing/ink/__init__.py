"""An arrangement to shapes of matplotlib: symbols, pipes, shaded areas, words where there is room, and the sheet."""

from plumbnet.drawing.ink.areas import ZonePieces, zone_pieces
from plumbnet.drawing.ink.drawing_limit import TooDense, is_dense_riser
from plumbnet.drawing.ink.paint import paint_composition
from plumbnet.drawing.ink.paper import SMALLEST_SCALE, PaperSize, SheetName, paper_for, paper_named
from plumbnet.drawing.ink.pen import Cut, Group, Pen, identifier
from plumbnet.drawing.ink.pipes import arrow_corners, crossings, hopping_path
from plumbnet.drawing.ink.sheet import (
    DrawingSheet,
    PlacedLegend,
    draw_legend,
    draw_sheet,
    extent,
    legend_for,
    sheet_for,
)
from plumbnet.drawing.ink.sheet_composition import Composition, composition

__all__ = [
    "SMALLEST_SCALE",
    "Composition",
    "Cut",
    "DrawingSheet",
    "Group",
    "PaperSize",
    "Pen",
    "PlacedLegend",
    "SheetName",
    "TooDense",
    "ZonePieces",
    "arrow_corners",
    "composition",
    "crossings",
    "draw_legend",
    "draw_sheet",
    "extent",
    "hopping_path",
    "identifier",
    "is_dense_riser",
    "legend_for",
    "paint_composition",
    "paper_for",
    "paper_named",
    "sheet_for",
    "zone_pieces",
]
