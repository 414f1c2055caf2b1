"""What is alike to what is drawn: one shaft for many, one branch drawn out for many, the others by its letter."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, product

from plumbnet.drawing.riser.likeness.alike import Likeness
from plumbnet.drawing.riser.structure import Riser, Structure

_SIGNS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True)
class BranchFold:
    """Branches alike: the letter and how many there are, the one drawn out, all of them by number."""

    letter: str
    shown: int
    members: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class DrawnShaft:
    """A shaft that is drawn, for itself or for `others` alike as well, by the places of these among all shafts."""

    place: int
    risers: tuple[Riser, ...]
    branches: tuple[int, ...]
    others: tuple[int, ...] = ()

    @property
    def count(self) -> int:
        """How many shafts it stands for."""
        return 1 + len(self.others)


@dataclass(frozen=True)
class Folding:
    """What is drawn of a building: shafts, the folds of branches, and which branches are drawn out."""

    shafts: tuple[DrawnShaft, ...]
    folds: tuple[BranchFold, ...]
    shown: frozenset[int]

    @cached_property
    def fold_of(self) -> Mapping[int, BranchFold]:
        """The fold of each branch that is in one."""
        return {number: fold for fold in self.folds for number in fold.members}


def folding_of(structure: Structure, likeness: Likeness, least: int) -> Folding:
    """The folds of a building, where at least so many shafts or branches are alike.

    Of those alike the one is drawn that sets a limit, else the lowest, else the first.
    """
    shafts = tuple(_shafts(structure, likeness, least))
    drawn: dict[int, list[int]] = defaultdict(list)
    for number in (number for shaft in shafts for number in shaft.branches):
        drawn[likeness.branches[number]].append(number)
    letters = ("".join(signs) for signs in chain(zip(_SIGNS), product(_SIGNS, repeat=2)))
    folds: list[BranchFold] = []
    shown: set[int] = set()
    for numbers in drawn.values():
        members = likeness.branches_like(numbers[0])
        if len(numbers) == 1 or len(members) < least:
            shown.update(numbers)
            continue
        first = min(numbers, key=lambda number: (not _sets_limit(structure, [number]), _level(structure, number)))
        folds.append(BranchFold(next(letters), first, tuple(members)))
        shown.add(first)
    return Folding(shafts, tuple(folds), frozenset(shown))


def _level(structure: Structure, number: int) -> int:
    return structure.components[number].level


def _shafts(structure: Structure, likeness: Likeness, least: int) -> Sequence[DrawnShaft]:
    groups: dict[int, list[int]] = defaultdict(list)
    for place, first in enumerate(likeness.shafts):
        groups[first].append(place)
    found: list[DrawnShaft] = []
    for group in groups.values():
        by_limit = sorted(group, key=lambda place: not _sets_limit(structure, structure.shafts[place].branches))
        drawn = by_limit[:1] if len(group) >= least else group
        for place in drawn:
            shaft = structure.shafts[place]
            others = tuple(each for each in group if each != place) if len(group) >= least else ()
            found.append(DrawnShaft(place, shaft.risers, shaft.branches, others))
    return found


def _sets_limit(structure: Structure, branches: Sequence[int]) -> bool:
    """Whether the limit of some heater is set in one of these branches."""
    members = (name for number in branches for name in structure.components[number].members)
    return any(structure.building.parts[name].is_limit for name in members)
