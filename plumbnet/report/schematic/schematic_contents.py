"""A report to all that its schematic says: items with their words, zones, ways, title block and legend."""

from collections.abc import Iterator
from pathlib import PurePath

from plumbnet.analysis import Report
from plumbnet.drawing import shortened
from plumbnet.drawing.items import BlockRow, Letters, Schematic
from plumbnet.report.schematic.building_plan import building_facts
from plumbnet.report.schematic.legend_words import LEGEND
from plumbnet.report.schematic.revision_letters import RevisionLetters
from plumbnet.report.schematic.schematic_items import diagram_of
from plumbnet.report.schematic.schematic_notes import notes
from plumbnet.report.schematic.schematic_remarks import shadings, stop_remarks, ways
from plumbnet.report.text import CAUTION

_LONGEST_TITLE = 90
_MOST_HEATERS = 12


def schematic_of(
    report: Report, date: str | None = None, marked: RevisionLetters | None = None, *, riser: bool | None = None
) -> Schematic:
    """What the schematic of a report says; `date` is printed as it is given, `marked` what a revision moved.

    `riser`: as a riser diagram, or not; None where the building decides. What a revision moved is shown in none.
    """
    verdicts = {heater.name: heater.verdict for heater in report.heaters}
    marked = marked or RevisionLetters()
    said = {name: (*lines, *marked.words.get(name, ())) for name, lines in notes(report).items()}
    letters = marked.letters
    diagram = diagram_of(report.system, said, verdicts=verdicts, ringed=stop_remarks(report), framed=letters.items)
    block, title = tuple(title_block(report, date)), f"{title_of(report)}{marked.side}"
    building = building_facts(report, is_wanted=riser) if letters == Letters() else None
    zones, legend = tuple(shadings(report)), LEGEND
    return Schematic(title, diagram, block, zones, ways(report), legend, CAUTION, letters, building)


def title_of(report: Report) -> str:
    """What stands above the drawing."""
    return shortened(report.system.title or report.system.record.file or "Schematic", _LONGEST_TITLE)


def title_block(report: Report, date: str | None) -> Iterator[BlockRow]:
    """What the title block says: file, rules, date, and the verdict on each heater."""
    yield BlockRow("file", PurePath(report.system.record.file).name or "-")
    yield BlockRow("rules", report.rules.title)
    if report.scenario is not None:
        yield BlockRow("scenario", report.scenario)
    if date is not None:
        yield BlockRow("date", date)
    for heater in report.heaters[:_MOST_HEATERS]:
        yield BlockRow(heater.name, heater.verdict.value.upper(), heater.verdict)
    more = len(report.heaters) - _MOST_HEATERS
    if more > 0:
        yield BlockRow("", f"and {more} more heaters")
