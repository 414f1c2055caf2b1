"""A report to the dossier that a page is written from: its remedies, the layout with each made, its scenarios."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plumbnet.analysis.report import Report
from plumbnet.layout.fault import LayoutError
from plumbnet.study.proposal import Proposal, with_remedy
from plumbnet.study.remedies import Found, remedies_if_small
from plumbnet.study.whatif import WhatIf, whatif


@dataclass(frozen=True, slots=True)
class Dossier:
    """All that a page tells.

    `found` are the remedies (None: the layout is so large that they were not looked for), `cures` the layout with the
    first remedy of each heater in trouble, `whatifs` one for each scenario of the file, and `refused` why nothing can
    be computed in a scenario. `date` is what its reader wants printed as the date; empty for none.
    """

    report: Report
    found: Found | None
    cures: Mapping[str, Proposal]
    whatifs: tuple[WhatIf, ...]
    refused: Mapping[str, str]
    date: str = ""


def dossier(report: Report, *, date: str = "") -> Dossier:
    """The dossier of a report; of a report on a scenario without the others, which start from the layout as it is."""
    found = remedies_if_small(report)
    cures = {name: with_remedy(report, own[0]) for name, own in (found or {}).items() if own}
    refused: dict[str, str] = {}
    scenarios = tuple(_scenarios(report, refused)) if report.scenario is None else ()
    return Dossier(report, found, cures, scenarios, refused, date)


def _scenarios(report: Report, refused: dict[str, str]) -> Iterator[WhatIf]:
    for name in report.system.scenarios:
        try:
            yield whatif(report, scenario=name)
        except LayoutError as error:
            refused[name] = "; ".join(fault.sentence for fault in error.faults)
