"""The risers of a shaft in columns: which stand left of its branches and which right, and how wide that is."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from plumbnet.drawing.columns import MARGIN, surround
from plumbnet.drawing.items import Item
from plumbnet.drawing.lettering import size_of
from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.likeness import DrawnShaft
from plumbnet.drawing.riser.stacking.doors import DoorKey, door_key, doors_of
from plumbnet.drawing.riser.structure import Riser, RiserEnd, Structure, chains_in

_PITCH = 13.0
"""Between two risers, at least."""
_CLEAR = 5.0
"""Between a device, or its words, and the next riser."""
_ABOVE = 9.0
"""Between two devices in a riser."""


def on_the_right(structure: Structure, shaft: DrawnShaft) -> frozenset[int]:
    """The risers that stand right of the branches, by number.

    Cold ones, where a branch hangs on hot and cold: what stands between its risers crosses neither.
    """
    riser_of = {chain.number: riser for riser in shaft.risers for chain in riser.chains}
    cold = {riser.number for riser in shaft.risers if riser.service is Service.COLD}
    for number in shaft.branches:
        ends = structure.components[number].ends
        services = {riser_of[each.chain.number].service for each in ends if each.chain.number in riser_of}
        if Service.COLD in services and services & {Service.HOT, Service.MIXED}:
            return frozenset(cold)
    return frozenset()


def home_risers(structure: Structure, shaft: DrawnShaft) -> Mapping[DoorKey, Riser]:
    """The riser on which each door of a branch sits: the one that passes it, else the one that is no return."""
    met: dict[DoorKey, list[Riser]] = {}
    for riser in shaft.risers:
        for chain in riser.chains:
            for end in chain.ends:
                home = structure.home[end.part]
                if not home.is_plant:
                    met.setdefault(door_key(structure, home, RiserEnd(chain, end)), []).append(riser)
    return {
        key: min(risers, key=lambda riser: (-risers.count(riser), riser.service is Service.RETURN, riser.number))
        for key, risers in met.items()
    }


def right_doors(
    structure: Structure, number: int, homes: Mapping[DoorKey, Riser], right: frozenset[int]
) -> frozenset[DoorKey]:
    """The doors of a branch that open to the right; `homes` are the risers on which those of its shaft sit."""
    doors = doors_of(structure, structure.components[number])
    return frozenset(key for key in doors if homes[key].number in right)


@dataclass(frozen=True, slots=True)
class RiserWidth:
    """How far a riser's devices reach to each side, and its words on one."""

    device: float
    words: float


def riser_width(structure: Structure, riser: Riser) -> RiserWidth:
    """The room that a riser takes beside its line."""
    items = [structure.diagram.items[name] for chain in chains_in([riser]) for name in chain.devices]
    device = max((max(item.symbol.reach) + surround(item) for item in items), default=0.0)
    return RiserWidth(device, max((size_of(item.lines)[0] + MARGIN for item in items), default=0.0))


def device_step(item: Item) -> float:
    """Length that a device takes in its riser."""
    return max(item.symbol.width + 2 * surround(item), size_of(item.lines)[1]) + _ABOVE


def columns_of(widths: Sequence[RiserWidth], words_left: int) -> tuple[list[float], float]:
    """The x of risers side by side from 0 on, and where all ends; the first `words_left` have words at their left."""
    x, found = 0.0, list[float]()
    for number, (before, own) in enumerate(pairwise([RiserWidth(0.0, 0.0), *widths])):
        words = own.words if number < words_left else 0.0
        room = own.device + words
        if number:
            said = before.words if number > words_left else 0.0
            x += max(_PITCH, before.device + said + _CLEAR, room + _CLEAR, before.device + said + room + _CLEAR)
        else:
            x += room
        found.append(x)
    last = widths[-1] if widths else RiserWidth(0.0, 0.0)
    return found, x + last.device + (last.words if len(widths) > words_left else 0.0)
