"""Reports to one table for spreadsheets: a row to a file, heater, finding, assumption; its columns are a promise.

Source of the form: RFC 4180. Numbers are SI; pressures are gauge, at the heater's own height.
"""

import csv
import io
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from plumbnet.analysis import Report
from plumbnet.layout.yaml import Fault, visible
from plumbnet.report.output import FilePiece, Listing, Unread, program_version
from plumbnet.rules import Finding, rules_in_words
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies import Checked

CsvCell = str | float | int | None
CsvRow = Mapping[str, CsvCell]

HEATER_COLUMNS: Final = (
    "static_pa",
    "limit_pa",
    "limit_by",
    "settled_pa",
    "cold_k",
    "hot_k",
    "heated_volume_m3",
    "expansion_m3",
    "opens_first",
    "opens_first_pa",
    "stopped_by",
    "short_m3",
    "need_tank_m3",
    "need_nominal_m3",
    "need_precharge_pa",
    "need_at",
)
"""What is told of a heater alone; SI, pressures gauge at the heater's own height."""
COLUMNS: Final = (
    "record",
    "file",
    "line",
    "column",
    "name",
    "kind",
    "verdict",
    "severity",
    "parts",
    *HEATER_COLUMNS,
    "clause",
    "clause_verified",
    "text",
    "advice",
    "reason",
    "title",
    "sha256",
    "rules",
    "rules_sha256",
    "plumbnet",
    "rules_from",
)
"""Names of the columns, the unit at the end of those that hold a quantity; more may come behind them.

`record` says what a row is: file, heater, finding, accepted, idle (accepted but not found), assumed or error.
"""
APOSTROPHE = "'"
FORMULA: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""How a cell begins that a spreadsheet would take for a formula (common practice)."""
BETWEEN = "; "
"""What parts the names in one cell."""


@dataclass(frozen=True, slots=True)
class CsvWriter:
    """One table of everything."""

    is_for_people: bool = False
    shows_remedies: bool = False

    def answered(self, checked: Checked) -> FilePiece:
        """A row for the file, then one for each heater, finding, accepted finding and assumption."""
        return FilePiece(answers=(_text({"file": checked.file, **row} for row in _rows(checked.report)),))

    def refused(self, unread: Unread) -> FilePiece:
        """A row for each mistake."""
        return FilePiece(
            answers=(_text({"record": "error", "file": unread.file, **fault_cells(fault)} for fault in unread.faults),)
        )

    def document(self) -> Listing:
        """The names of the columns, then the rows as they come; lines end as RFC 4180 says."""
        return Listing(_text([dict(zip(COLUMNS, COLUMNS, strict=True))]))


def cell(value: CsvCell) -> str:
    """A value as a cell that shows what it holds and does nothing.

    Signs that do not print are made visible; a text that begins like a formula has an apostrophe before it. Numbers
    are written as they are, to be read back without loss.

    >>> cell("=1+1"), cell(-0.5), cell(None), cell("140 °F")
    ("'=1+1", '-0.5', '', '140 °F')
    """
    if value is None:
        return ""
    if not isinstance(value, str):
        return repr(value)
    shown = visible(value)
    return APOSTROPHE + shown if value.startswith(FORMULA) or shown.lstrip().startswith(FORMULA) else shown


def _text(rows: Iterable[CsvRow]) -> str:
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\r\n")
    for row in rows:
        table.writerow([cell(row.get(column)) for column in COLUMNS])
    return text.getvalue()


def _rows(report: Report) -> Iterator[CsvRow]:
    record = report.system.record
    yield {
        "record": "file",
        "title": report.system.title,
        "sha256": record.sha256,
        "rules": rules_in_words(report.rules.named),
        "rules_sha256": rules_in_words(report.rules.sha256),
        "rules_from": rules_in_words(report.rules.named_by),
        "plumbnet": program_version(),
    }
    for heater in report.heaters:
        yield {"record": "heater", **heater_cells(heater)}
    for finding in report.findings:
        yield {"record": "finding", **finding_cells(finding)}
    for accepted in report.accepted:
        yield {"record": "accepted", **finding_cells(accepted.finding), "reason": accepted.reason}
    for idle in report.idle:
        yield {"record": "idle", "name": idle.finding, "parts": idle.part, "reason": idle.reason}
    for text, parts in report.facts.assumed.items():
        yield {"record": "assumed", "text": text, "parts": BETWEEN.join(parts)}


def heater_cells(heater: HeaterFacts) -> CsvRow:
    """What stands in the columns of a heater."""
    first = heater.ladder[0] if heater.ladder else None
    need = heater.need
    return {
        "line": heater.line or None,
        "name": heater.name,
        "kind": heater.kind,
        "verdict": heater.verdict.value,
        "static_pa": heater.static_pa,
        "limit_pa": heater.limit_pa,
        "limit_by": heater.limit_by,
        "settled_pa": heater.settled_pa,
        "cold_k": heater.cold_k,
        "hot_k": heater.hot_k,
        "heated_volume_m3": heater.heated_volume_m3,
        "expansion_m3": heater.expansion_m3,
        "opens_first": None if first is None else first.outlet,
        "opens_first_pa": None if first is None else first.opens_pa,
        "stopped_by": BETWEEN.join(heater.stopped_by.sets[0]) if heater.stopped_by.sets else None,
        "short_m3": heater.short_m3,
        "need_tank_m3": None if need is None else need.tank_m3,
        "need_nominal_m3": None if need is None else need.nominal_m3,
        "need_precharge_pa": None if need is None else need.precharge_pa,
        "need_at": None if need is None else need.at,
    }


def fault_cells(fault: Fault) -> CsvRow:
    """What stands in the columns of a mistake in a file."""
    return {"line": fault.line or None, "column": fault.column or None, "text": fault.sentence}


def finding_cells(finding: Finding) -> CsvRow:
    """What stands in the columns of a finding."""
    return {
        "line": finding.line or None,
        "name": finding.name,
        "severity": finding.severity.value,
        "parts": BETWEEN.join(finding.parts),
        "clause": finding.clause,
        "clause_verified": str(finding.verified).lower(),
        "text": finding.text,
        "advice": finding.advice,
    }
