"""The chapter of calculation: the sheet of each heater, every step of it, and the size of tank against pressure."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import partial

from matplotlib.figure import Figure

from plumbnet.analysis import Report
from plumbnet.analysis.sizing_sheet import Sheet
from plumbnet.report.charts import figure_of, tank_chart
from plumbnet.report.page.page_content import PageBlock, PagePicture
from plumbnet.report.prose import Heading, Paragraph
from plumbnet.report.sheets import sheet_blocks
from plumbnet.study.dossier import Dossier, Sizes

_SAID_ABOVE = frozenset({"Building", "File", "Program", "Rules"})
"""Labels of what a sheet says by itself, and the page once for all."""


def calculation(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    report = dossier.report
    for sheet, *others in _alike(dossier.sheets):
        for block in sheet_blocks(sheet, report.facts.units, others=[one.heater.name for one in others]):
            if isinstance(block, Heading):
                yield replace(block, level=block.level + 2)
            elif not (isinstance(block, Paragraph) and block.label in _SAID_ABOVE):
                yield block
        if sheet.heater.name in dossier.sizes:
            yield _chart(report, sheet.heater.name, dossier.sizes[sheet.heater.name])
    left = len(report.heaters) - len(dossier.sheets)
    if left:
        yield Paragraph(f"The command plumbnet size prints the sheets of the other {left} heaters.")


def _alike(sheets: Iterable[Sheet]) -> list[list[Sheet]]:
    """Sheets that say the same of several heaters, as they do of those that share their water, together."""
    groups: list[list[Sheet]] = []
    for sheet in sheets:
        same = next((group for group in groups if _is_same(group[0], sheet)), None)
        if same is None:
            groups.append([sheet])
        else:
            same.append(sheet)
    return groups


def _is_same(one: Sheet, other: Sheet) -> bool:
    """Whether two sheets differ in nothing but whose they are."""
    first, second = one.heater, other.heater
    return (first.kind, first.verdict, one) == (second.kind, second.verdict, replace(other, heater=first))


def _chart(report: Report, heater: str, found: Sizes) -> PagePicture:
    """The size of a tank against pressure."""
    least, end = report.facts.volume(found.least_m3), report.facts.pressure(found.end_pa)
    words = f"The smallest tank for {heater} against the highest pressure allowed: {least} at {end}."
    return PagePicture(f"Size of the tank for {heater}", words, partial(_figure, report, heater, found))


def _figure(report: Report, heater: str, found: Sizes) -> Figure:
    return figure_of(tank_chart(report, heater, found))
