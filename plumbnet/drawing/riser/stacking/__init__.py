"""A structure and its folds to paper: plants and branches laid out, stacked level on level, joined by risers."""

from plumbnet.drawing.riser.stacking.branch_names import branch_called, shafts_called
from plumbnet.drawing.riser.stacking.detail_places import place_details
from plumbnet.drawing.riser.stacking.free_places import FreePlaces
from plumbnet.drawing.riser.stacking.letter_box import letter_item
from plumbnet.drawing.riser.stacking.level_marks import level_words, marks_of
from plumbnet.drawing.riser.stacking.movement import moved
from plumbnet.drawing.riser.stacking.riser_marks import (
    COUNT_SIZE,
    LEVEL_SIZE,
    SHEAF,
    BreakMark,
    CaptionMark,
    CardMark,
    FloorMark,
    RiserMark,
)
from plumbnet.drawing.riser.stacking.riser_pipes import RiserPipes
from plumbnet.drawing.riser.stacking.setting import Setting, setting_of, with_plants_below
from plumbnet.drawing.riser.stacking.shaft_places import ShaftPlace, put_side_by_side

__all__ = [
    "COUNT_SIZE",
    "LEVEL_SIZE",
    "SHEAF",
    "BreakMark",
    "CaptionMark",
    "CardMark",
    "FloorMark",
    "FreePlaces",
    "RiserMark",
    "RiserPipes",
    "Setting",
    "ShaftPlace",
    "branch_called",
    "letter_item",
    "level_words",
    "marks_of",
    "moved",
    "place_details",
    "put_side_by_side",
    "setting_of",
    "shafts_called",
    "with_plants_below",
]
