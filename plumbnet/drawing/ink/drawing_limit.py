"""How much a drawing may hold so that anyone can read it, and what is said of a layout that holds more."""

from plumbnet.drawing.items import Diagram, Schematic
from plumbnet.drawing.riser import Structure, drawn_count, stackable

MOST_PARTS_DRAWN = 2000
MOST_PIPES_DRAWN = 4000


class TooDense(ValueError):
    """No drawing is made: too much is left of a layout when all has been folded that can be.

    `as_riser` is the number of parts that a riser diagram of it would have, None where none can be made.
    """

    def __init__(self, left: str, as_riser: int | None = None) -> None:
        most = f"{MOST_PARTS_DRAWN:,} parts or {MOST_PIPES_DRAWN:,} pipes"
        other = "" if as_riser is None else f"; as a riser diagram it has {as_riser:,} parts"
        super().__init__(f"no drawing is made of more than {most}; folded as far as can be, this one has {left}{other}")
        self.as_riser = as_riser


def refuse_dense(schematic: Schematic, diagram: Diagram) -> None:
    """Raise TooDense for what is left of a schematic in layers, with the drawing that could be made instead."""
    if len(diagram.items) > MOST_PARTS_DRAWN or len(diagram.links) > MOST_PIPES_DRAWN:
        structure = stackable(schematic.diagram, schematic.building)
        count = None if structure is None else drawn_count(structure)
        left = f"{len(diagram.items):,} parts and {len(diagram.links):,} pipes"
        raise TooDense(left, count if count is not None and count <= MOST_PARTS_DRAWN else None)


def refuse_dense_riser(structure: Structure, least_fold: int) -> None:
    """Raise TooDense for a riser diagram in which too much is unlike."""
    if is_dense_riser(structure, least_fold):
        raise TooDense(f"{drawn_count(structure, least_fold):,} parts")


def is_dense_riser(structure: Structure, least_fold: int) -> bool:
    """Whether nobody could read a riser diagram: too much in it is unlike."""
    return len(structure.diagram.items) > MOST_PARTS_DRAWN < drawn_count(structure, least_fold)
