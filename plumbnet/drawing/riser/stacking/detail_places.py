"""Details to their places: where plants and shafts leave room, as near to the shafts as may be."""

from collections.abc import Iterator, Sequence

from plumbnet.drawing.riser.stacking.free_places import FreePlaces
from plumbnet.drawing.riser.stacking.setting import Setting
from plumbnet.drawing.riser.stacking.shaft_places import ShaftPlace
from plumbnet.drawing.routing import Box

CARD_SIDE = 6.0
"""Between a detail and the edge of its card."""
CARD_HEAD = 20.0
"""Above a detail, for its letter and count."""
_BETWEEN = 26.0
_ABOVE_SHAFT = 60.0
_LEAD = 44.0


def place_details(setting: Setting, places: Sequence[ShaftPlace]) -> None:
    """Set the corner of each detail."""
    right = max([place.right for place in places] + [setting.bands.right])
    top, foot = setting.bands.top - _ABOVE_SHAFT, setting.bands.floor[0]
    most = max((detail.width for detail in setting.details.values()), default=0.0)
    tall = sum(detail.height + CARD_HEAD + _BETWEEN for detail in setting.details.values())
    free = FreePlaces((0.0, min(top, foot - tall), right + most + 3 * _BETWEEN, foot), _taken(setting, places))
    for number, detail in setting.details.items():
        wide, high = detail.width + 2 * CARD_SIDE, detail.height + CARD_SIDE + CARD_HEAD
        at = free.least_beyond(wide, high, right) or (right + _BETWEEN, foot - high)
        free.take((*at, at[0] + wide, at[1] + high))
        setting.detail_corner[number] = (at[0] + CARD_SIDE, at[1] + CARD_HEAD + detail.height)


def _taken(setting: Setting, places: Sequence[ShaftPlace]) -> Iterator[Box]:
    """Plants with all that leads out of them, and shafts with their floors."""
    bands = setting.bands
    last = max((place.right for place in places), default=bands.right)
    end = max(last, bands.right)
    for number, plant in setting.plants.items():
        x, y = bands.corner[number]
        level = setting.structure.components[number].level
        yield x, y - plant.height, bands.right, bands.floor[level]
        yield 0.0, bands.floor[level] - 10.0, bands.right, bands.floor[level]
    for (number, _), (_, y) in bands.header.items():
        level = setting.structure.components[number].level
        yield (0.0 if bands.is_below else bands.width), y, end, bands.floor[level]
    for y in bands.floor:
        yield (0.0 if bands.is_below else bands.right), y - 10.0, last, y
    for place in places:
        spans = [setting.span(riser) for riser in place.shaft.risers]
        top = min((span[0] for span in spans), default=0.0)
        yield place.left - _LEAD, top - _ABOVE_SHAFT, place.right, 0.0
