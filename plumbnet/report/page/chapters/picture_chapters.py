"""The chapters with pictures of the whole layout: its piping, and the ladders of its heaters."""

from collections.abc import Iterator, Sequence
from functools import partial

from matplotlib.figure import Figure

from plumbnet.analysis import Report
from plumbnet.report.charts import figure_of, ladder_chart
from plumbnet.report.page.chapters.heater_groups import alike_heaters
from plumbnet.report.page.page_content import Entry, PageBlock, PagePicture
from plumbnet.report.prose import Paragraph, Table, names_in_short
from plumbnet.report.schematic import fold_rows, is_riser_diagram, schematic
from plumbnet.rules import listed
from plumbnet.rules.facts import TROUBLED, HeaterFacts
from plumbnet.study.dossier import Dossier
from plumbnet.study.margins import StreetBand

ACROSS = 3
"""Ladders side by side on a sheet as wide as the page."""
MOST_LADDERS = 12
"""Ladders, those of heaters in trouble before others; of heaters alike there is one."""

MOST_DRAWN = 300
"""Parts up to which the piping is drawn on a page."""
_MOST_NAMED = 40
"""Heaters named under the picture, so that their parts light up in it."""


def piping(dossier: Dossier) -> Iterator[PageBlock]:
    """The piping with what lets the water go and what stops it."""
    report = dossier.report
    picture = drawn(report, "The piping", date=dossier.date)
    yield picture
    rows = fold_rows(report) if isinstance(picture, PagePicture) else ()
    if rows:
        yield Table(("drawn once", "for", "drawn out", "stands for"), rows)
    for heater in report.heaters[:_MOST_NAMED] if isinstance(picture, PagePicture) else ():
        verdict = heater.verdict.value
        yield Entry(verdict.upper(), verdict, heater.name, (), shown_up(heater))


def shown_up(heater: HeaterFacts) -> tuple[str, ...]:
    """Parts that light up for a heater: itself, and its way out, or else everything that stops it."""
    if heater.stopped_by.sets:
        names = [name for names in heater.stopped_by.sets for name in names]
    else:
        names = [] if heater.way_out is None else list(heater.way_out.way)
    return tuple(dict.fromkeys([heater.name, *names]))


def drawn(report: Report, title: str, *, date: str = "", is_small: bool = False) -> PageBlock:
    """A picture of the piping of a report; a small one shows what a remedy makes of it, and lights nothing up.

    A sentence in place of one that could not be read on a page.
    """
    if len(report.system.parts) > MOST_DRAWN and not is_riser_diagram(report):
        large = f"The piping has {len(report.system.parts)} parts, too many for a picture on a page"
        return Paragraph(f"{large}; the command plumbnet draw draws it on a sheet of its own.")
    verdicts = [f"{heater.name} is {heater.verdict.value}" for heater in report.heaters]
    words = f"Schematic of {len(report.system.parts)} parts; {listed(verdicts) if verdicts else 'nothing heats water'}."
    return PagePicture(title, words, partial(schematic, report, date=date or None), not is_small, is_small)


def ladders(dossier: Dossier) -> Iterator[PageBlock]:
    """The ladders, a few to a sheet."""
    yield from ladder_pictures(dossier.report, dossier.bands)


def ladder_pictures(report: Report, bands: Sequence[StreetBand] = ()) -> Iterator[PageBlock]:
    """The ladders of a report, a few to a sheet, beside the bands in which their streets may stand."""
    groups = _chosen(alike_heaters(report.facts))
    for start in range(0, len(groups), ACROSS):
        across = groups[start : start + ACROSS]
        named = [names_in_short(heater.name for heater in group) for group in across]
        told = "; ".join(_in_words(group[0]) for group in across)
        words = f"A column of pressure for each of {listed(named)}. {told}."
        yield PagePicture(
            f"Ladder of {listed(named)}", words, partial(_sheet, report, [group[0].name for group in across], bands)
        )
    left = len(report.heaters) - sum(map(len, groups))
    if left:
        yield Paragraph(f"{left} more heaters have no picture here.")


def _sheet(report: Report, names: Sequence[str], bands: Sequence[StreetBand]) -> Figure:
    return figure_of(ladder_chart(report, heaters=names, bands=bands))


def _chosen(groups: list[list[HeaterFacts]]) -> list[list[HeaterFacts]]:
    ranked = sorted(range(len(groups)), key=lambda number: groups[number][0].verdict not in TROUBLED)
    return [groups[number] for number in sorted(ranked[:MOST_LADDERS])]


def _in_words(heater: HeaterFacts) -> str:
    opens = [rung.outlet for rung in heater.ladder]
    return f"{heater.name}: {listed(opens)} {'opens' if len(opens) == 1 else 'open'} in turn"
