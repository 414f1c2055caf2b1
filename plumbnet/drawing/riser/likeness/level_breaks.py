"""Levels that look all the same to breaks: of many in a row the middle ones are left out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from plumbnet.drawing.riser.likeness.folding import DrawnShaft, Folding
from plumbnet.drawing.riser.structure import Chain, Riser, Structure

_LEAST = 12
"""Levels alike in a row before the middle ones are left out."""
_KEPT = 2
"""Of these at the foot, and at the top."""


@dataclass(frozen=True, slots=True)
class LevelBreak:
    """Levels left out, from the first of them to the one behind the last."""

    first: int
    behind: int


def device_levels(structure: Structure, chain: Chain) -> list[int]:
    """The level at which each device of a chain stands: its own, where its author wrote a height, else its fellow's."""
    low, high = (structure.home[end.part].level for end in chain.ends)
    high = max(low, high - structure.home[chain.high.part].is_plant)  # below the headers of a plant
    found: list[int] = []
    for name in chain.devices:
        own = structure.building.parts[name].height_m
        before = found[-1] if found else low
        found.append(before if own is None else min(max(before, structure.level_at(own)), high))
    return found


def broken(structure: Structure, folding: Folding) -> tuple[Folding, tuple[LevelBreak, ...]]:
    """The folding without the middle of twelve or more levels in a row on which every shaft has the same letters."""
    signs = [_sign(structure, folding, level) for level in range(len(structure.floors))]
    breaks: list[LevelBreak] = []
    first = 0
    for sign, run in groupby(signs):
        count = len(list(run))
        if sign is not None and count >= _LEAST:
            breaks.append(LevelBreak(first + _KEPT, first + count - _KEPT))
        first += count
    hidden = {level for each in breaks for level in range(each.first, each.behind)}
    if not hidden:
        return folding, ()
    shafts = tuple(_without(structure, shaft, hidden) for shaft in folding.shafts)
    return replace(folding, shafts=shafts), tuple(breaks)


def _sign(structure: Structure, folding: Folding, level: int) -> tuple[tuple[str, ...], ...] | None:
    """The letters on a level, shaft by shaft; None where anything else is drawn there."""
    if any(component.is_plant and component.level == level for component in structure.components):
        return None
    chains = [chain for shaft in folding.shafts for riser in shaft.risers for chain in riser.chains]
    if any(level in {structure.home[c.low.part].level, *device_levels(structure, c)} for c in chains if c.devices):
        return None
    here = [[n for n in shaft.branches if structure.components[n].level == level] for shaft in folding.shafts]
    if not any(here) or any(number in folding.shown for numbers in here for number in numbers):
        return None
    return tuple(tuple(folding.fold_of[number].letter for number in numbers) for numbers in here)


def _without(structure: Structure, shaft: DrawnShaft, hidden: set[int]) -> DrawnShaft:
    risers = tuple(replace(riser, chains=_joined(structure, riser, hidden)) for riser in shaft.risers)
    kept = tuple(number for number in shaft.branches if structure.components[number].level not in hidden)
    return replace(shaft, risers=risers, branches=kept)


def _joined(structure: Structure, riser: Riser, hidden: set[int]) -> tuple[Chain, ...]:
    """The chains of a riser, those that meet on a hidden level made one."""
    found: list[Chain] = []
    for chain in riser.chains:
        home = structure.home[chain.low.part]
        if found and home.level in hidden and not home.is_plant and found[-1].high.part == chain.low.part:
            found[-1] = _one(found[-1], chain)
        else:
            found.append(chain)
    return tuple(found)


def _one(low: Chain, high: Chain) -> Chain:
    first = low.links[0]
    start, end = (low.low, high.high) if first.start == low.low else (high.high, low.low)
    return replace(low, high=high.high, links=(replace(first, start=start, end=end),))


def hidden_levels(breaks: Sequence[LevelBreak]) -> frozenset[int]:
    """Every level that is left out."""
    return frozenset(level for each in breaks for level in range(each.first, each.behind))
