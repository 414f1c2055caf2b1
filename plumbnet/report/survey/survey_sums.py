"""The file of a survey to its sums: files by fate, heaters from verdict to verdict, what is worse, which findings."""

import os
import sqlite3
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Final, Generic, TypeVar

from plumbnet.report.output import NOT_A_LAYOUT, Fate
from plumbnet.report.survey.survey_entry import WhatIfFate
from plumbnet.report.survey.survey_file import told_in_words
from plumbnet.rules import Acceptor, Severity
from plumbnet.rules.facts import FROM_BEST_TO_WORST, Verdict

MOST_FILES_NAMED = 1_000
"""Files not understood, or no layouts, that are named; so many that only a folder of another kind has more."""
MOST_SHOWN_FIRST = 20
"""Heaters, findings and files that are named; of the rest is said how many there are."""

VerdictTurn = tuple[Verdict | None, Verdict | None]
"""A heater's verdict before and after; None where there is no such heater then, or nothing was supposed."""
Item = TypeVar("Item")


@dataclass(frozen=True, slots=True)
class First(Generic[Item]):
    """The first few of many, and how many there are in all."""

    items: tuple[Item, ...]
    in_all: int

    @property
    def more(self) -> int:
        """How many are not among them."""
        return self.in_all - len(self.items)


@dataclass(frozen=True, slots=True)
class FilePlace:
    """A heater in trouble: where it is declared, its verdict before and after, what stops its water."""

    path: str
    line: int | None
    name: str
    turn: VerdictTurn
    stopped_by: str


@dataclass(frozen=True, slots=True)
class StandingFinding:
    """A finding that no file accepts: how often it stands before and after a what-if, and in how many files."""

    name: str
    severity: Severity
    before: int
    after: int
    files: int


@dataclass(frozen=True, slots=True)
class Misread:
    """A file that was not understood, or in which the what-if cannot be made: its first mistake, how many it has."""

    path: str
    line: int | None
    text: str
    mistakes: int


@dataclass(frozen=True, slots=True)
class OtherSort:
    """A file that is no layout: what it is, and why."""

    path: str
    line: int | None
    sort: str
    text: str


@dataclass(frozen=True, slots=True)
class SurveySums:
    """The sums of a survey.

    `places` are the heaters that the what-if traps or, where nothing was supposed, those that are trapped. `missing`
    counts the files that an earlier run met and the last complete one did not: they count in nothing else.
    """

    is_supposed: bool
    files: Mapping[Fate, int]
    missing: int
    changes: Mapping[WhatIfFate, int]
    worse_files: int
    better_files: int
    turns: Mapping[VerdictTurn, int]
    worse_heaters: int
    better_heaters: int
    places: First[FilePlace]
    findings: First[StandingFinding]
    errors: int
    """Findings of severity error that stand, before or after."""
    accepted: int
    accepted_by: Mapping[tuple[Acceptor, str], int]
    """Of these, how many of each name are accepted by whom."""
    used_lines: frozenset[int]
    """Lines of the inspector's list that were about something found."""
    on_trust: int
    """Findings of severity error that nothing but the file's own word silences."""
    unknown: int
    """Files that are neither layouts nor anything else the program knows."""
    misread: First[Misread]
    others: First[OtherSort]

    @property
    def before(self) -> Mapping[Verdict, int]:
        """Heaters by their verdict as the files stand, from best to worst."""
        return _by_verdict((turn[0], count) for turn, count in self.turns.items())

    @property
    def after(self) -> Mapping[Verdict, int]:
        """Heaters by their verdict with the what-if made, from best to worst."""
        return _by_verdict((turn[1], count) for turn, count in self.turns.items())


def _by_verdict(counted: Iterable[tuple[Verdict | None, int]]) -> Mapping[Verdict, int]:
    found = dict.fromkeys(FROM_BEST_TO_WORST, 0)
    for verdict, count in counted:
        if verdict is not None:
            found[verdict] += count
    return found


_HEATERS: Final = "heater JOIN file ON file.id = heater.file WHERE is_present"
_FINDINGS: Final = "finding JOIN file ON file.id = finding.file WHERE is_present AND reason IS"
_PLACES: Final = {
    True: "SELECT path, line, name, verdict, after_verdict, after_stopped_by FROM became_trapped",
    False: "SELECT path, line, name, verdict, NULL, stopped_by FROM trapped",
}
_RANKS: Final = " ".join(f"WHEN '{severity}' THEN {severity.rank}" for severity in Severity)
_RANKED: Final = f"""
    SELECT name, severity, sum(stands_before), coalesce(sum(stands_after), 0), count(DISTINCT file)
    FROM {_FINDINGS} NULL GROUP BY name, severity
    ORDER BY CASE severity {_RANKS} END, 3 DESC, 4 DESC, 1"""  # noqa: S608  our own
_ACCEPTED: Final = f"""
    SELECT accepted_by, name, count(*) FROM {_FINDINGS} NOT NULL AND stands_before
    GROUP BY accepted_by, name ORDER BY 1, 2"""  # noqa: S608  our own
_USED: Final = f"SELECT DISTINCT accepted_line FROM {_FINDINGS} NOT NULL AND accepted_by = '{Acceptor.INSPECTOR}'"  # noqa: S608  our own
_OTHERS: Final = (
    "SELECT path, line, sort, text FROM note JOIN file ON file.id = note.file WHERE is_present ORDER BY path"
)
_MISREAD: Final = """
    SELECT path, line, text, mistakes
    FROM (SELECT file AS number, min(rowid) AS first, count(*) AS mistakes FROM error GROUP BY file)
    JOIN error ON error.rowid = first JOIN file ON file.id = number WHERE is_present ORDER BY path"""


@told_in_words()
def sums(file: sqlite3.Connection, *, is_supposed: bool) -> SurveySums:
    """The sums of what stands in the file of a survey; memory does not grow with it."""

    def number(what: str) -> int:
        return int(file.execute(f"SELECT count(*) FROM {what}").fetchone()[0])  # noqa: S608  our own names

    def by(column: str) -> dict[str, int]:
        query = f"SELECT {column}, count(*) FROM file WHERE is_present AND {column} <> '' GROUP BY {column}"  # noqa: S608  our own
        return dict(file.execute(query).fetchall())

    def first(query: str, make: Callable[..., Item], most: int = MOST_SHOWN_FIRST) -> First[Item]:
        items = file.execute(f"{query} LIMIT {most}").fetchall()
        return First(tuple(make(*row) for row in items), number(f"({query})"))

    fates, changes = by("fate"), by("what_if")
    return SurveySums(
        is_supposed=is_supposed,
        files={fate: fates.get(fate, 0) for fate in Fate},
        missing=number("file WHERE NOT is_present"),
        changes={change: changes.get(change, 0) for change in WhatIfFate},
        worse_files=number("file WHERE is_present AND is_worse"),
        better_files=number("file WHERE is_present AND is_better"),
        turns={_turn(old, new): count for old, new, count in file.execute("SELECT * FROM turned").fetchall()},
        worse_heaters=number(f"{_HEATERS} AND heater.is_worse"),
        better_heaters=number(f"{_HEATERS} AND heater.is_better"),
        places=first(_PLACES[is_supposed], _place),
        findings=first(_RANKED, _standing),
        errors=number(f"{_FINDINGS} NULL AND severity = 'error'"),
        accepted=number(f"{_FINDINGS} NOT NULL AND stands_before"),
        accepted_by={(Acceptor(by), name): count for by, name, count in file.execute(_ACCEPTED).fetchall()},
        on_trust=number(f"{_FINDINGS} NOT NULL AND severity = 'error' AND accepted_by = '{Acceptor.APPLICANT}'"),
        unknown=number(f"note JOIN file ON file.id = note.file WHERE is_present AND sort = '{NOT_A_LAYOUT}'"),
        used_lines=frozenset(line for (line,) in file.execute(_USED).fetchall()),
        misread=first(_MISREAD, lambda path, *others: Misread(os.fsdecode(path), *others), MOST_FILES_NAMED),
        others=first(_OTHERS, lambda path, *others: OtherSort(os.fsdecode(path), *others), MOST_FILES_NAMED),
    )


def _turn(old: str | None, new: str | None) -> VerdictTurn:
    return None if old is None else Verdict(old), None if new is None else Verdict(new)


def _place(path: str | bytes, line: int | None, name: str, *others: str | None) -> FilePlace:
    old, new, stopped_by = others
    return FilePlace(os.fsdecode(path), line, name, _turn(old, new), stopped_by or "")


def _standing(name: str, severity: str, *counts: int) -> StandingFinding:
    return StandingFinding(name, Severity(severity), *counts)
