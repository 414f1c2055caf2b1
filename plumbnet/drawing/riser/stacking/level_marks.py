"""A setting to its marks: floor lines with their heights, cards round what stands for many, breaks."""

from collections.abc import Iterator, Sequence

from plumbnet.drawing.lettering import LEADING, name_lines
from plumbnet.drawing.riser.likeness import hidden_levels
from plumbnet.drawing.riser.stacking.bands import BREAK
from plumbnet.drawing.riser.stacking.branch_names import branch_called, caption_lines
from plumbnet.drawing.riser.stacking.detail_places import CARD_HEAD, CARD_SIDE
from plumbnet.drawing.riser.stacking.riser_marks import (
    LEVEL_SIZE,
    BreakMark,
    CaptionMark,
    CardMark,
    FloorMark,
    RiserMark,
)
from plumbnet.drawing.riser.stacking.setting import Setting
from plumbnet.drawing.riser.stacking.shaft_places import ShaftPlace, count_words
from plumbnet.drawing.riser.structure import Riser, Structure
from plumbnet.layout.units import LENGTH, to

_BESIDE = 5.0
_FOOT = 3.0
_ABOVE = 28.0
_LEAD = 40.0
_LONGEST = 40
_SHAFT_HEAD = 14.0
_COUNT = 12.0


def marks_of(setting: Setting, places: Sequence[ShaftPlace]) -> Iterator[RiserMark]:
    """The marks of cards and captions, of levels from the ground up, of breaks."""
    for number, detail in setting.details.items():
        fold, (x, y) = setting.folding.fold_of[number], setting.detail_corner[number]
        box = (x - CARD_SIDE, y - detail.height - CARD_HEAD, x + detail.width + CARD_SIDE, y + CARD_SIDE)
        yield CardMark(
            box, f"{fold.letter}  × {len(fold.members)}", name_lines(branch_called(setting.structure, number), _LONGEST)
        )
    for place in places:
        if place.shaft.others:
            yield _shaft_card(setting, place)
        elif place.shaft.branches:
            yield _caption(setting, place)
    bands = setting.bands
    left = -_LEAD if bands.is_below else bands.right
    right = max((place.right + _BESIDE for place in places), default=bands.right)
    structure, hidden = setting.structure, hidden_levels(setting.breaks)
    with_plants = {plant.level for plant in structure.plants}
    for level, y in enumerate(setting.bands.floor):
        if level not in hidden:
            yield FloorMark(-_LEAD if level in with_plants else left, right, y, level_words(structure, level))
    for each in setting.breaks:
        y = setting.bands.floor[each.first] - BREAK / 2
        xs = [
            setting.x[riser.number] for riser in _risers(setting) if setting.span(riser)[0] < y < setting.span(riser)[1]
        ]
        first, last = level_words(structure, each.first), level_words(structure, each.behind - 1)
        yield BreakMark(left, y, tuple(sorted(xs)), (f"{first} to {last}:", f"{each.behind - each.first} levels alike"))


def _risers(setting: Setting) -> Iterator[Riser]:
    for shaft in setting.folding.shafts:
        yield from shaft.risers


def _shaft_card(setting: Setting, place: ShaftPlace) -> CardMark:
    tops = [setting.span(riser)[0] for riser in place.shaft.risers]
    bases = [setting.bands.base[setting.structure.components[number].level] for number in place.shaft.branches]
    lines = caption_lines(setting.structure, place.shaft)
    head = min(tops) - _SHAFT_HEAD - len(lines) * LEVEL_SIZE * LEADING - _COUNT
    box = (place.left - _BESIDE, head, place.right + _BESIDE, max(bases, default=max(tops)) + _FOOT)
    return CardMark(box, count_words(place.shaft), lines)


def _caption(setting: Setting, place: ShaftPlace) -> CaptionMark:
    top = min(setting.span(riser)[0] for riser in place.shaft.risers)
    return CaptionMark(place.left, top - _ABOVE, caption_lines(setting.structure, place.shaft))


def level_words(structure: Structure, level: int) -> str:
    """The height of a level, as one writes it on a drawing."""
    unit, digits = ("ft", 0) if structure.building.units == "us" else ("m", 1)
    height = round(to(structure.floors[level], unit, LENGTH), digits)
    return f"{height + 0.0:.{digits}f} {unit}"
