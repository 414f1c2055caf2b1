"""The review of a layout, in Python."""

from plumbnet.analysis import Report
from plumbnet.study.review import Review, review_of


def review(report: Report, *, reviewer: str = "", date: str = "") -> Review:
    """What every requirement of the rules answers, with the comments numbered.

    `report` is what `check` makes of a layout; `reviewer` and `date` are printed as they are given.
    """
    return review_of(report, reviewer=reviewer, date=date)
