"""A report to its schematic: what is said of each part, shaded, ringed and explained, as data for the drawing."""

from plumbnet.report.schematic.drawn_folds import fold_rows, is_riser_diagram, may_be_riser_diagram
from plumbnet.report.schematic.legend_words import LEGEND
from plumbnet.report.schematic.revision_letters import RevisionLetters, letters_after, letters_before
from plumbnet.report.schematic.schematic_contents import schematic_of, title_of
from plumbnet.report.schematic.schematic_figure import (
    DRAWN_FORMS,
    DrawnForm,
    revision_schematic,
    schematic,
    schematic_file,
    schematic_svg,
)
from plumbnet.report.schematic.schematic_items import diagram_of

__all__ = [
    "DRAWN_FORMS",
    "LEGEND",
    "DrawnForm",
    "RevisionLetters",
    "diagram_of",
    "fold_rows",
    "is_riser_diagram",
    "letters_after",
    "letters_before",
    "may_be_riser_diagram",
    "revision_schematic",
    "schematic",
    "schematic_file",
    "schematic_of",
    "schematic_svg",
    "title_of",
]
