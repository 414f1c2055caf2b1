"""A setting to its marks: floor lines with their heights, cards round what stands for many, breaks."""

from collections.abc import Iterator, Sequence

from plumbnet.drawing.riser.likeness import DrawnShaft, called, hidden_levels, range_of
from plumbnet.drawing.riser.stacking.bands import BREAK
from plumbnet.drawing.riser.stacking.riser_marks import BreakMark, CardMark, LevelMark, RiserMark
from plumbnet.drawing.riser.stacking.setting import Setting
from plumbnet.drawing.riser.stacking.shaft_places import ShaftPlace, count_words
from plumbnet.drawing.riser.structure import Riser, Structure
from plumbnet.layout.units import LENGTH, to

_BESIDE = 5.0
_HEAD = 18.0
_FOOT = 3.0
_LEAD = 40.0
_SHAFT_HEAD = 30.0


def marks_of(setting: Setting, places: Sequence[ShaftPlace]) -> Iterator[RiserMark]:
    """The marks from the ground up, then cards, then breaks."""
    left, right = setting.bands.right, max((place.right for place in places), default=setting.bands.right)
    structure, hidden = setting.structure, hidden_levels(setting.breaks)
    with_plants = {plant.level for plant in structure.plants}
    for level, y in enumerate(setting.bands.floor):
        if level not in hidden:
            yield LevelMark(-_LEAD if level in with_plants else left, right, y, level_words(structure, level))
    for number, stop in setting.stops.items():
        if setting.is_card(number):
            fold, (x, y) = setting.folding.fold_of[number], setting.corner[number]
            box = (x - _BESIDE, y - stop.height - _HEAD, x + stop.width + _BESIDE - 1.0, y + _FOOT)
            yield CardMark(box, f"{fold.letter}  × {len(fold.members)}")
    for place in places:
        if place.shaft.others:
            yield _shaft_card(setting, place)
    for each in setting.breaks:
        y = setting.bands.floor[each.first] - BREAK / 2
        xs = [setting.x[riser.number] for riser in _risers(setting) if setting.span(riser)[0] < y < setting.span(riser)[1]]
        first, last = level_words(structure, each.first), level_words(structure, each.behind - 1)
        yield BreakMark(left, y, tuple(sorted(xs)), (f"{first} to {last}:", f"{each.behind - each.first} levels alike"))


def _risers(setting: Setting) -> Iterator[Riser]:
    for shaft in setting.folding.shafts:
        yield from shaft.risers


def _shaft_card(setting: Setting, place: ShaftPlace) -> CardMark:
    tops = [setting.span(riser)[0] for riser in place.shaft.risers]
    bases = [setting.bands.base[setting.structure.components[number].level] for number in place.shaft.branches]
    box = (place.left - _BESIDE, min(tops) - _SHAFT_HEAD, place.right + _BESIDE, max(bases, default=max(tops)) + _FOOT)
    return CardMark(box, count_words(place.shaft), shafts_called(setting.structure, place.shaft))


def shafts_called(structure: Structure, shaft: DrawnShaft) -> str:
    """The shafts for which one is drawn, by what their lowest branches are called."""
    every = [structure.shafts[place] for place in (shaft.place, *shaft.others)]
    return range_of([branch_called(structure, each.branches[0]) for each in every if each.branches])


def branch_called(structure: Structure, number: int) -> str:
    """What a branch is called."""
    members = structure.components[number].members
    return called(members, [name for name in members if structure.building.parts[name].is_use])


def level_words(structure: Structure, level: int) -> str:
    """The height of a level, as one writes it on a drawing."""
    unit, digits = ("ft", 0) if structure.building.units == "us" else ("m", 1)
    height = round(to(structure.floors[level], unit, LENGTH), digits)
    return f"{height + 0.0:.{digits}f} {unit}"
