"""A structure and its folds to paper: plants and branches laid out, stacked level on level, joined by risers."""

from plumbnet.drawing.riser.stacking.level_marks import branch_called, level_words, marks_of, shafts_called
from plumbnet.drawing.riser.stacking.letter_box import letter_item
from plumbnet.drawing.riser.stacking.movement import moved
from plumbnet.drawing.riser.stacking.riser_marks import (
    COUNT_SIZE,
    LEVEL_SIZE,
    SHEAF,
    BreakMark,
    CardMark,
    LevelMark,
    RiserMark,
)
from plumbnet.drawing.riser.stacking.riser_pipes import RiserPipes
from plumbnet.drawing.riser.stacking.setting import Setting, setting_of
from plumbnet.drawing.riser.stacking.shaft_places import put_side_by_side

__all__ = [
    "COUNT_SIZE",
    "LEVEL_SIZE",
    "SHEAF",
    "BreakMark",
    "CardMark",
    "LevelMark",
    "RiserMark",
    "RiserPipes",
    "Setting",
    "branch_called",
    "letter_item",
    "level_words",
    "marks_of",
    "moved",
    "put_side_by_side",
    "setting_of",
    "shafts_called",
]
