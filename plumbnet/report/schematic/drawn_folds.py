"""A report to what of its layout is drawn once for many: the rows of a table beside the picture."""

from plumbnet.analysis import Report
from plumbnet.drawing import is_dense_riser
from plumbnet.drawing.riser import FEWEST_FOLDED, folds_of, stackable, stacked
from plumbnet.report.schematic.schematic_contents import schematic_of


def is_riser_diagram(report: Report) -> bool:
    """Whether the schematic of a report is drawn as a riser diagram of its own accord, and one can read it."""
    said = schematic_of(report)
    structure = stacked(said.diagram, said.building)
    return structure is not None and not is_dense_riser(structure, FEWEST_FOLDED)


def may_be_riser_diagram(report: Report) -> bool:
    """Whether a riser diagram can be made of the layout of a report where it is asked for."""
    said = schematic_of(report)
    return stackable(said.diagram, said.building) is not None


def fold_rows(report: Report) -> tuple[tuple[str, str, str, str], ...]:
    """Of all that the riser diagram draws once for many: sign, count, the one drawn out, and the names of all.

    Names that follow on each other are a range; all others are listed. No rows for any other drawing.
    """
    said = schematic_of(report)
    structure = stacked(said.diagram, said.building)
    folds = () if structure is None else folds_of(structure)
    return tuple((fold.letter or "shaft", str(fold.count), fold.shown, fold.all_names) for fold in folds)
