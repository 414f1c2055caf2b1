"""A diagram to what its riser diagram draws once for many, without drawing it."""

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.riser.fold_entries import FoldEntry, fold_entries
from plumbnet.drawing.riser.likeness import folding_of, likeness_of
from plumbnet.drawing.riser.structure import Structure, structure_of

FEWEST_FOLDED = 3
"""Branches or shafts alike of which a riser diagram draws one, at its natural size."""


def stacked(diagram: Diagram, building: BuildingFacts | None) -> Structure | None:
    """The structure of a building that is drawn as a riser diagram; None where it is not.

    One is drawn where it shows the building best, or where it is wanted and can be made.
    """
    if building is None or building.is_wanted is False:
        return None
    structure = structure_of(diagram, building)
    is_one = structure.is_stacked if building.is_wanted else structure.is_tall
    return structure if is_one else None


def folds_of(structure: Structure, least: int = FEWEST_FOLDED) -> tuple[FoldEntry, ...]:
    """What is drawn once for many, where at least so many are alike."""
    return tuple(fold_entries(structure, folding_of(structure, likeness_of(structure), least)))
