"""The chapter of remedies: what would cure each heater, the layout with the first of them, and the warm-up then."""

from collections.abc import Iterator
from functools import partial

from matplotlib.figure import Figure

from plumbnet.analysis.report import Report
from plumbnet.analysis.warming import NoWarmUp
from plumbnet.layout.quantity import PRESSURE
from plumbnet.report.charts.ink import figure_of
from plumbnet.report.charts.warmup import Courses, courses, draw_courses
from plumbnet.report.cures import MOST_SHOWN, NONE_FOUND, RELIEF_FIRST, outcome
from plumbnet.report.document import Heading, Paragraph, Points
from plumbnet.report.page.chapters.piping import drawn
from plumbnet.report.page.content import PageBlock, Picture
from plumbnet.report.page.dossier import Dossier
from plumbnet.rules.facts import Verdict
from plumbnet.study.proposal import Proposal
from plumbnet.study.remedies import MOST_PARTS, Remedy

MOST_PICTURES = 4
"""Heaters whose cure is drawn."""
MOST_WARM_UPS = 2
"""Heaters whose warm-up is drawn."""
MOST_TOGETHER = 8
"""Heaters that share one water; the warm-up of more takes too long to run beside a page."""


def cures(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter; none where no heater is in trouble."""
    if dossier.found is None:
        few = f"Remedies are looked for in layouts of up to {MOST_PARTS} parts"
        yield Paragraph(f"{few}; the command plumbnet remedies looks in any.")
        return
    sealed = {heater.name for heater in dossier.report.heaters if heater.verdict is Verdict.SEALED}
    if dossier.found:
        yield Paragraph("Each was tried on a copy of this layout, and breaks nothing else. Least work first.")
    shown: dict[str, str] = {}
    for heater, own in dossier.found.items():
        yield Heading(heater, 3)
        if heater in sealed:
            yield Paragraph(RELIEF_FIRST)
        yield Points(tuple(_told(dossier, own))) if own else Paragraph(NONE_FOUND)
        if heater in dossier.cures:
            yield from _pictures(dossier, heater, shown)


def _told(dossier: Dossier, own: tuple[Remedy, ...]) -> Iterator[str]:
    for remedy in own[:MOST_SHOWN]:
        yield f"{remedy.title} {outcome(dossier.report.facts, remedy)}"
    if len(own) > MOST_SHOWN:
        yield f"{len(own) - MOST_SHOWN} more; the command plumbnet remedies shows them all."


def _pictures(dossier: Dossier, heater: str, shown: dict[str, str]) -> Iterator[PageBlock]:
    """The layout with the first remedy and the warm-up with it; a layout that stands there already is named."""
    proposal = dossier.cures[heater]
    if proposal.remedy.title in shown:
        yield Paragraph(f"The picture at {shown[proposal.remedy.title]} shows it.")
        return
    if len(shown) == MOST_PICTURES:
        return
    shown[proposal.remedy.title] = heater
    yield drawn(proposal.after, f"With the first remedy for {heater}", is_small=True)
    together = next(each for each in dossier.report.heaters if each.name == heater).shares_with
    if len(shown) <= MOST_WARM_UPS and len(together) < MOST_TOGETHER:
        yield _warm_up(dossier.report, heater, proposal)


def _warm_up(report: Report, heater: str, proposal: Proposal) -> PageBlock:
    """The warm-up as a picture, or a sentence that says why there is none."""
    try:
        found = courses(report, heater, proposal)
    except NoWarmUp as error:
        return Paragraph(f"There is no picture of the warm-up: {error}.")
    unit = PRESSURE.us if report.facts.units == "us" else PRESSURE.metric
    highest = [f"{max(course.pressures):.4g} {unit} {words}" for words, course in found.lines.items()]
    words = (
        f"Temperature and pressure of {heater} from cold with every fixture shut. The pressure climbs to "
        f"{'; to '.join(highest)}"
    )
    return Picture(f"Warm-up of {heater}", words, partial(_chart, found))


def _chart(found: Courses) -> Figure:
    return figure_of(draw_courses(found))
