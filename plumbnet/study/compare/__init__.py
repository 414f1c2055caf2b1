"""Two reports, or two layouts, to what differs between them."""

from plumbnet.study.compare.layout_revision import Changes, Named, Revision, revision
from plumbnet.study.compare.report_difference import Difference, Figure, HeaterChange, difference

__all__ = ["Changes", "Difference", "Figure", "HeaterChange", "Named", "Revision", "difference", "revision"]
