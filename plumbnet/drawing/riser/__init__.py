"""A building to its riser diagram: floors as levels, risers on shafts, what is alike drawn once with its count.

Everything is read from the graph and the heights as written; names only say what stands where. - chain: pipes through
devices in line between two ends that stand for themselves; riser: chains one above the other of one service, each of
which climbs to another storey; component: what hangs together without the risers, a plant that supplies them or a
branch that hangs on them; shaft: risers that share branches. - fold: branches alike of which one is drawn out, the
others boxes with its letter. - stand: what is drawn on a level, with a door at each place where risers join it.
"""

from plumbnet.drawing.riser.fold_entries import FoldEntry
from plumbnet.drawing.riser.folded import FEWEST_FOLDED, drawn_count, folds_of, stackable, stacked
from plumbnet.drawing.riser.riser_arrangement import RiserDiagram, riser_diagram
from plumbnet.drawing.riser.stacking import (
    COUNT_SIZE,
    LEVEL_SIZE,
    SHEAF,
    BreakMark,
    CaptionMark,
    CardMark,
    FloorMark,
    FreePlaces,
    RiserMark,
)
from plumbnet.drawing.riser.structure import Structure, structure_of

__all__ = [
    "COUNT_SIZE",
    "FEWEST_FOLDED",
    "LEVEL_SIZE",
    "SHEAF",
    "BreakMark",
    "CaptionMark",
    "CardMark",
    "FloorMark",
    "FoldEntry",
    "FreePlaces",
    "RiserDiagram",
    "RiserMark",
    "Structure",
    "drawn_count",
    "folds_of",
    "riser_diagram",
    "stackable",
    "stacked",
    "structure_of",
]
