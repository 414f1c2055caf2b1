"""A heater in trouble to the layout in which it is cured: the remedy that adds a tank, or else the first."""

from plumbnet.analysis import Report
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy import Found, Proposal, Remedy
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_search import remedies
from plumbnet.study.remedies.trial import tried


def with_remedy(report: Report, remedy: Remedy) -> Proposal:
    """The report on a layout once a remedy of it is made. Raises ValueError for a remedy of another layout."""
    trial = tried(RemedyContext(report), remedy.changes)
    if trial is None:
        raise ValueError(f"this remedy was made for another layout: {remedy.title}")
    return Proposal(remedy, trial.after.report)


def with_tank(report: Report, heater: str, found: Found | None = None) -> Proposal | None:
    """The layout with a tank added for a heater, or with its first remedy; None where it needs or has none.

    `found` are the remedies of the report; they are looked for when left out.
    """
    own = (remedies(report) if found is None else found).get(heater, ())
    chosen = next((one for one in own if one.effort is Effort.ADD), next(iter(own), None))
    return None if chosen is None else with_remedy(report, chosen)
