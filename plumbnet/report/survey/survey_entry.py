"""One file of a survey to the rows that are kept of it: the file, its heaters, findings and mistakes; plain data."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from plumbnet.analysis import Report
from plumbnet.layout.yaml import Fault
from plumbnet.report.formats import CsvRow, fault_cells, finding_cells, heater_cells
from plumbnet.report.output import Fate, Noted
from plumbnet.rules import rules_in_words
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.compare import HeaterChange
from plumbnet.study.whatif import WhatIf

OF_BOTH = ("line", "name", "kind")
"""What a heater is before and after a what-if; all else of it stands twice, the second time under `AFTER`."""
AFTER = "after_"


class WhatIfFate(StrEnum):
    """What became of a what-if in a file."""

    MADE = "made"
    NOT_TOUCHED = "not touched"
    """The layout has nothing that it would change."""
    REFUSED = "refused"
    """It cannot be made in the layout, or nothing can be computed then."""


@dataclass(frozen=True, slots=True)
class SurveyEntry:
    """What a survey keeps of one file. `sha256` is None where the file is to be looked at again in any case."""

    path: str
    sha256: str | None
    fate: Fate
    file: CsvRow
    heaters: tuple[CsvRow, ...] = ()
    findings: tuple[CsvRow, ...] = ()
    errors: tuple[CsvRow, ...] = ()
    notes: tuple[CsvRow, ...] = ()

    def tables(self) -> tuple[tuple[str, tuple[CsvRow, ...]], ...]:
        """Its rows, by the table they stand in."""
        return (("heater", self.heaters), ("finding", self.findings), ("error", self.errors), ("note", self.notes))


def noted_entry(path: str, sha256: str | None, noted: Noted) -> SurveyEntry:
    """The entry of a file that is no layout."""
    notes = tuple({**fault_cells(fault), "sort": noted.sort} for fault in noted.faults)
    return SurveyEntry(path, sha256, Fate.NO_LAYOUT, {}, notes=notes)


def refused_entry(path: str, sha256: str | None, faults: Sequence[Fault]) -> SurveyEntry:
    """The entry of a file that could not be understood."""
    return SurveyEntry(path, sha256, Fate.NOT_UNDERSTOOD, {}, errors=tuple(map(fault_cells, faults)))


def answered(
    path: str, report: Report, found: WhatIf | None, change: WhatIfFate | None, faults: Sequence[Fault] = ()
) -> SurveyEntry:
    """The entry of a file that was checked, and of the same with a what-if made.

    `change` tells what became of the what-if, None where nothing was asked; `found` is None unless there is an answer;
    `faults` say why there is none.
    """
    file: CsvRow = {
        "title": report.system.title,
        "rules": rules_in_words(report.rules.named),
        "what_if": change,
        "is_worse": None if found is None else int(found.difference.is_worse),
        "is_better": None if found is None else int(found.difference.is_better),
    }
    return SurveyEntry(
        path,
        report.system.record.sha256,
        Fate.CHECKED,
        file,
        tuple(_heaters(report, found)),
        tuple(_findings(report, None if found is None else found.after)),
        tuple(map(fault_cells, faults)),
    )


def _heaters(report: Report, found: WhatIf | None) -> Iterator[CsvRow]:
    if found is None:
        yield from map(heater_cells, report.heaters)
        return
    for heater in found.difference.heaters:
        yield {**_cells(heater), "is_worse": int(heater.is_worse), "is_better": int(heater.is_better)}


def _cells(heater: HeaterChange) -> CsvRow:
    """Both answers in one row; empty where there is no such heater."""
    before, after = _of(heater.before), _of(heater.after)
    return {
        **{name: value for name, value in after.items() if name in OF_BOTH},
        **before,
        **{f"{AFTER}{name}": value for name, value in after.items() if name not in OF_BOTH},
    }


def _of(heater: HeaterFacts | None) -> CsvRow:
    return {} if heater is None else heater_cells(heater)


def _findings(report: Report, after: Report | None) -> Iterator[CsvRow]:
    """Each finding once, with whether it stands before and after; those that only the what-if brings last."""
    before, now = list(_judged(report)), [] if after is None else list(_judged(after))
    for cells in before:
        yield {**cells, "stands_before": 1, "stands_after": None if after is None else int(cells in now)}
    for cells in now:
        if cells not in before:
            yield {**cells, "stands_before": 0, "stands_after": 1}


def _judged(report: Report) -> Iterator[CsvRow]:
    """Findings that stand, with what somebody says of them in vain, then those that are accepted, with the reason."""
    claims = {one.finding: one for one in report.claimed}
    for finding in report.findings:
        claim = claims.get(finding)
        yield {**finding_cells(finding), **({} if claim is None else {"claimed": claim.reason, "stands_as": claim.why})}
    for one in report.accepted:
        yield {
            **finding_cells(one.finding),
            "reason": one.reason,
            "accepted_by": one.by.value,
            "accepted_line": one.line,
        }
