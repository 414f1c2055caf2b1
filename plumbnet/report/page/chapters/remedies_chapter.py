"""The chapter of remedies: what would cure each heater, the layout with the first of them, and the warm-up then."""

from collections.abc import Iterator
from functools import partial

from matplotlib.figure import Figure

from plumbnet.analysis import Report
from plumbnet.layout.units import PRESSURE
from plumbnet.report.charts import figure_of, lines, warmup_chart
from plumbnet.report.page.chapters.picture_chapters import drawn
from plumbnet.report.page.page_content import PageBlock, PagePicture
from plumbnet.report.prose import Heading, Paragraph, Points
from plumbnet.report.text import (
    MOST_REMEDIES,
    NONE_FOUND,
    RELIEF_FIRST,
    list_title,
    not_looked_for,
    not_searched,
    remedy_outcome,
    remedy_place,
)
from plumbnet.rules.facts import Verdict
from plumbnet.study.dossier import Dossier, WarmUps
from plumbnet.study.remedies import Remedy, left_out, remedy_lists


def cures(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter; none where no heater is in trouble."""
    if dossier.found is None:
        yield Paragraph(not_looked_for())
        return
    sealed = {heater.name for heater in dossier.report.heaters if heater.verdict is Verdict.SEALED}
    if dossier.found:
        yield Paragraph("Each was tried on a copy of this layout, and breaks nothing else. Least work first.")
    shown: dict[str, str] = {}
    cut = left_out(dossier.found)
    if cut:
        yield Paragraph(not_searched(cut))
    for each in remedy_lists(dossier.report.heaters, dossier.found):
        own = each.remedies
        if not own and set(each.heaters) <= set(cut):
            continue
        yield Heading(list_title(each), 3)
        if sealed & set(each.heaters):
            yield Paragraph(RELIEF_FIRST)
        yield Points(tuple(_told(dossier, own))) if own else Paragraph(NONE_FOUND)
        if own:
            yield from _pictures(dossier, own[0].heater, own[0].title, shown)


def _told(dossier: Dossier, own: tuple[Remedy, ...]) -> Iterator[str]:
    for remedy in own[:MOST_REMEDIES]:
        told = (remedy.title, remedy_place(remedy), remedy_outcome(dossier.report.facts, remedy))
        yield " ".join(filter(None, told))
    if len(own) > MOST_REMEDIES:
        yield f"{len(own) - MOST_REMEDIES} more; the command plumbnet remedies shows them all."


def _pictures(dossier: Dossier, heater: str, title: str, shown: dict[str, str]) -> Iterator[PageBlock]:
    """The layout with the remedy of that title and the warm-up with it; one that stands there already is named."""
    if title in shown:
        yield Paragraph(f"The picture at {shown[title]} shows it.")
        return
    if heater not in dossier.cures:
        return
    shown[title] = heater
    picture = drawn(dossier.cures[heater].after, f"With the first remedy for {heater}", is_small=True)
    if isinstance(picture, PagePicture):
        yield picture
    if heater in dossier.warm_ups:
        yield _warm_up(dossier.report, heater, dossier.warm_ups[heater])
    if heater in dossier.cold:
        yield Paragraph(f"There is no picture of the warm-up: {dossier.cold[heater]}.")


def _warm_up(report: Report, heater: str, found: WarmUps) -> PagePicture:
    """The warm-up as a picture."""
    unit = PRESSURE.unit_name(report.facts.units)
    highest = [f"{max(course.pressures):.4g} {unit} {words}" for words, course in lines(found).items()]
    words = (
        f"Temperature and pressure of {heater} from cold with every fixture shut. The pressure climbs to "
        f"{'; to '.join(highest)}"
    )
    return PagePicture(f"Warm-up of {heater}", words, partial(_chart, found))


def _chart(found: WarmUps) -> Figure:
    return figure_of(warmup_chart(found))
