"""A diagram to what its riser diagram draws once for many, without drawing it."""

from plumbnet.drawing.items import BuildingFacts, Diagram
from plumbnet.drawing.riser.fold_entries import FoldEntry, fold_entries
from plumbnet.drawing.riser.likeness import broken, folding_of, likeness_of
from plumbnet.drawing.riser.structure import LEAST_PARTS, Structure, chains_in, structure_of

FEWEST_FOLDED = 3
"""Branches or shafts alike of which a riser diagram draws one, at its natural size."""


def stacked(diagram: Diagram, building: BuildingFacts | None) -> Structure | None:
    """The structure of a building that is drawn as a riser diagram; None where it is not.

    One is drawn where it shows the building best, or where it is wanted and can be made.
    """
    if building is None or building.is_wanted is False:
        return None
    if not building.is_wanted and len(diagram.items) < LEAST_PARTS:
        return None  # never tall, and looked for in every house that is drawn
    structure = stackable(diagram, building)
    return structure if structure is not None and (building.is_wanted or structure.is_tall) else None


def stackable(diagram: Diagram, building: BuildingFacts | None) -> Structure | None:
    """The structure of a building of which a riser diagram can be made, wanted or not; None where none can."""
    structure = None if building is None else structure_of(diagram, building)
    return structure if structure is not None and structure.is_stacked else None


def drawn_count(structure: Structure, least: int = FEWEST_FOLDED) -> int:
    """How many parts its riser diagram draws, the boxes of letters among them."""
    folding, _ = broken(structure, folding_of(structure, likeness_of(structure), least))
    numbers = [number for shaft in folding.shafts for number in shaft.branches]
    whole = folding.shown | {plant.number for plant in structure.plants}
    boxed = [structure.components[number] for number in numbers if number in folding.fold_of]
    joints = sum(len({each.end.part for each in box.ends}) for box in boxed if box.number not in whole)
    devices = sum(len(chain.devices) for shaft in folding.shafts for chain in chains_in(shaft.risers))
    return sum(len(structure.components[number].members) for number in whole) + len(boxed) + joints + devices


def folds_of(structure: Structure, least: int = FEWEST_FOLDED) -> tuple[FoldEntry, ...]:
    """What is drawn once for many, where at least so many are alike."""
    return tuple(fold_entries(structure, folding_of(structure, likeness_of(structure), least)))
