"""Folds to what is told of them in words: the legend's sentence, and the list of all that one drawing stands for."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.drawing.riser.likeness import LEFT_OUT, BranchFold, Folding, natural, range_of
from plumbnet.drawing.riser.stacking import branch_called, level_words, shafts_called
from plumbnet.drawing.riser.structure import Structure, chains_in


@dataclass(frozen=True, slots=True)
class FoldEntry:
    """What is drawn once for many: its letter (none for shafts), how many, which one is drawn out, all their names."""

    letter: str
    count: int
    shown: str
    names: str
    members: tuple[str, ...]

    @property
    def all_names(self) -> str:
        """The names of all: as a range where that leaves none to guess, else one after the other."""
        return self.names if LEFT_OUT not in self.names else ", ".join(sorted(self.members, key=natural))


def said_of_fold(structure: Structure, fold: BranchFold) -> str:
    """What the legend says of a letter."""
    names = range_of([branch_called(structure, number) for number in fold.members])
    at = level_words(structure, structure.components[fold.shown].level)
    return f"branch {fold.letter} × {len(fold.members)} ({names}), drawn out: the one at {at}"


def fold_entries(structure: Structure, folding: Folding) -> Iterator[FoldEntry]:
    """What is drawn once for many: branches by their letters, then shafts; `members` in natural order."""
    for fold in folding.folds:
        called = [branch_called(structure, number) for number in fold.members]
        shown = branch_called(structure, fold.shown)
        yield FoldEntry(fold.letter, len(fold.members), shown, range_of(called), tuple(called))
    for shaft in folding.shafts:
        if shaft.others:
            every = [structure.shafts[place] for place in (shaft.place, *shaft.others)]
            called = [branch_called(structure, number) for each in every for number in each.branches]
            inside = [name for each in every for chain in chains_in(each.risers) for name in chain.devices]
            shown = branch_called(structure, shaft.branches[0]) if shaft.branches else ""
            yield FoldEntry("", shaft.count, shown, shafts_called(structure, shaft), (*called, *inside))
