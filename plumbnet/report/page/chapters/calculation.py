"""The chapter of calculation: the sheet of each heater, every step of it, and the size of tank against pressure."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial

from matplotlib.figure import Figure

from plumbnet.analysis.report import Report
from plumbnet.analysis.sheet import sheets
from plumbnet.report.charts.ink import figure_of
from plumbnet.report.charts.sizes import NoChart, Sizes, sizer
from plumbnet.report.charts.tank import draw_sizes
from plumbnet.report.document import Heading, Paragraph
from plumbnet.report.page.content import PageBlock, Picture
from plumbnet.report.page.dossier import Dossier
from plumbnet.report.sheet import blocks
from plumbnet.rules.facts import TROUBLED, HeaterFacts

MOST_SHEETS = 12
"""Heaters with a sheet, those in trouble before others."""

_SAID_ABOVE = frozenset({"Building", "File", "Program", "Rules"})
"""Labels of what a sheet says by itself, and the page once for all."""


def calculation(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    report = dossier.report
    chosen = sorted(report.heaters, key=lambda heater: heater.verdict not in TROUBLED)[:MOST_SHEETS]
    sizes = sizer(report)
    for sheet in sheets(report, chosen):
        for block in blocks(sheet, report.facts.units):
            if isinstance(block, Heading):
                yield replace(block, level=block.level + 2)
            elif not (isinstance(block, Paragraph) and block.label in _SAID_ABOVE):
                yield block
        yield from _chart(report, sheet.heater, sizes)
    left = len(report.heaters) - len(chosen)
    if left:
        yield Paragraph(f"The command plumbnet size prints the sheets of the other {left} heaters.")


def _chart(report: Report, heater: HeaterFacts, sizes: Callable[[str], Sizes]) -> Iterator[PageBlock]:
    """The size of a tank against pressure, for a heater that needs one."""
    if heater.verdict not in TROUBLED:
        return
    try:
        found = sizes(heater.name)
    except NoChart:
        return
    least, end = report.facts.volume(found.least_m3), report.facts.pressure(found.end_pa)
    words = f"The smallest tank for {heater.name} against the highest pressure allowed: {least} at {end}."
    yield Picture(f"Size of the tank for {heater.name}", words, partial(_figure, found, report, heater.name))


def _figure(found: Sizes, report: Report, heater: str) -> Figure:
    return figure_of(draw_sizes(found, report, heater))
