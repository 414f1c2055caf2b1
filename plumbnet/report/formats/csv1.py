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
from plumbnet.report.output import FilePiece, Listing, Noted, Unread, program_version
from plumbnet.rules import Accepted, Claimed, Finding, OwnAcceptances, Word, rules_in_words
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
    "accepted_by",
    "accepted_at",
    "own_acceptances",
    "own_sha256",
)
"""Names of the columns, the unit at the end of those that hold a quantity; more may come behind them.

`record` says what a row is: file, heater, finding, accepted, claimed (accepted, but the finding before it stands), idle
(accepted but not found), assumed, note or error.
"""
APOSTROPHE = "'"
FORMULA: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""How a cell begins that a spreadsheet would take for a formula (common practice)."""
NONE_COUNTS: Final = "none"
"""What stands for the inspector's list where no acceptance counts at all."""
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

    def noted(self, noted: Noted) -> FilePiece:
        """A row for each sentence."""
        rows = ({"record": "note", "file": noted.file, "kind": noted.sort, **fault_cells(one)} for one in noted.faults)
        return FilePiece(answers=(_text(rows),))

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
        **_own(report.own_acceptances),
    }
    for heater in report.heaters:
        yield {"record": "heater", **heater_cells(heater)}
    claims = {one.finding: one for one in report.claimed}
    for finding in report.findings:
        yield {"record": "finding", **finding_cells(finding)}
        if finding in claims:
            claim = claims[finding]
            own = finding_cells(finding)
            yield {"record": "claimed", **own, "text": claim.why, "advice": None, **_accepted(claim)}
    for accepted in report.accepted:
        yield {"record": "accepted", **finding_cells(accepted.finding), **_accepted(accepted)}
    for idle in report.idle:
        yield {"record": "idle", **_idle(idle)}
    for text, parts in report.facts.assumed.items():
        yield {"record": "assumed", "text": text, "parts": BETWEEN.join(parts)}


def _own(own: OwnAcceptances | None) -> CsvRow:
    return {} if own is None else {"own_acceptances": own.file or NONE_COUNTS, "own_sha256": own.sha256}


def _accepted(one: Accepted | Claimed) -> CsvRow:
    return {"reason": one.reason, "accepted_by": one.by.value, "accepted_at": _at(one.file, one.line)}


def _idle(word: Word) -> CsvRow:
    return {
        "name": word.acceptance.finding,
        "parts": BETWEEN.join(word.acceptance.names),
        "reason": word.acceptance.reason,
        "accepted_by": word.by.value,
        "accepted_at": _at(word.file, word.line),
    }


def _at(file: str, line: int) -> str:
    return f"{file}:{line}" if file else str(line)


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
