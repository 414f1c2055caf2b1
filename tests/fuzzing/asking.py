"""All that a layout can be asked beside its check, one question at a time."""

from collections.abc import Callable, Iterator
from functools import cache, partial
from pathlib import Path

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.analysis.warmup.heater_warmup import NoWarmUp, warm_up
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.physics.sizing.methods import METHODS
from plumbnet.report.comparison.comparison_data import comparison_json
from plumbnet.report.comparison.comparison_report import comparison_text
from plumbnet.report.page.page_writer import page_file
from plumbnet.report.schematic.schematic_figure import schematic_file
from plumbnet.report.sheets.sheet_data import sheets_json
from plumbnet.report.sheets.sheet_report import sheets_markdown, sheets_text
from plumbnet.report.studies.sweep_data import sweep_csv, sweep_json
from plumbnet.report.studies.sweep_report import sweep_text
from plumbnet.report.studies.whatif_data import whatifs_json
from plumbnet.report.studies.whatif_report import whatifs_text
from plumbnet.report.text import remedies_report as cures
from plumbnet.report.trace.trace_report import trace_text
from plumbnet.report.warmup import warmup_data
from plumbnet.report.warmup import warmup_report as warmup
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.study.compare.whole_comparison import comparison
from plumbnet.study.dossier.report_dossier import dossier
from plumbnet.study.remedies.fewest_tanks.tank_placement import plans

Answer = tuple[str, str]
"""How it is written, and what."""
Question = Callable[[], Answer]
SYSTEMS = Path(__file__).parents[2] / "systems"
NOTHING: Answer = ("text", "")


def questions(data: bytes, *, with_pictures: bool) -> Iterator[Question]:
    """The questions about a layout that can be checked."""
    report = plumbnet.check(plumbnet.read_bytes(data, file="input.yaml"))
    units = report.facts.units
    for heater in report.heaters[:3]:
        yield partial(_traced, report, heater)
        yield partial(_warming, report, heater.name)
    first = list(report.heaters[:3])
    yield lambda: ("text", sheets_text(sheets(report, first), units))
    yield lambda: ("text", sheets_markdown(sheets(report, first), units))
    for method in METHODS:
        yield partial(_sized, report, method)
    for name in report.system.scenarios:
        yield partial(_supposed, report, name, "json")
        yield partial(_supposed, report, name, "text")
    yield lambda: ("text", cures.remedies_text(report, plumbnet.remedies(report), plans(report)))
    yield lambda: ("text", sweep_text(plumbnet.sweep(report)))
    yield lambda: ("json", sweep_json(plumbnet.sweep(report)))
    yield lambda: ("csv", sweep_csv(plumbnet.sweep(report)))
    yield lambda: ("text", comparison_text(comparison(report, _usual())))
    yield lambda: ("json", comparison_json(comparison(_usual(), report)))
    if with_pictures:
        yield lambda: ("xml", schematic_file(report, "svg").decode())
        yield lambda: (NOTHING[0], page_file(dossier(report), "html")[:0].decode())


@cache
def _usual() -> Report:
    return plumbnet.check(plumbnet.read(SYSTEMS / "school-shared-tanks.yaml"))


def _traced(report: Report, heater: HeaterFacts) -> Answer:
    return "text", trace_text(report.facts, water_walk(report, heater))


def _sized(report: Report, method: str) -> Answer:
    return "json", sheets_json(sheets(report, list(report.heaters[:1]), method=method), report.facts.units)


def _warming(report: Report, heater: str) -> Answer:
    try:
        warming = warm_up(report, heater)
    except NoWarmUp as error:
        return "text", str(error)
    warmup_data.to_csv(warming)
    warmup_data.warmup_json(warming)
    return "text", warmup.warmup_text(warming)


def _supposed(report: Report, name: str, form: str) -> Answer:
    try:
        found = plumbnet.whatif(report, scenario=name)
    except LayoutError:
        return NOTHING
    return form, whatifs_json([found]) if form == "json" else whatifs_text([found])
