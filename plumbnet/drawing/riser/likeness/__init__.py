"""A structure to what of it is alike, whatever it is called, and to what is drawn of that: one for many."""

from plumbnet.drawing.riser.likeness.alike import Likeness, likeness_of
from plumbnet.drawing.riser.likeness.folding import BranchFold, DrawnShaft, Folding, folding_of
from plumbnet.drawing.riser.likeness.graph_classes import graph_classes
from plumbnet.drawing.riser.likeness.level_breaks import LevelBreak, broken, device_levels, hidden_levels
from plumbnet.drawing.riser.likeness.member_ranges import LEFT_OUT, called, natural, range_of

__all__ = [
    "LEFT_OUT",
    "BranchFold",
    "DrawnShaft",
    "Folding",
    "LevelBreak",
    "Likeness",
    "broken",
    "called",
    "device_levels",
    "folding_of",
    "graph_classes",
    "hidden_levels",
    "likeness_of",
    "natural",
    "range_of",
]
