"""The file of a survey: opened or refused, a batch of entries to a transaction, what is known already left alone.

SQLite in its ordinary journal: whatever ends the program, the batches that were done are there and no other is. The
right to write is held from first to last, so that a second survey is refused while others may read.
"""

import json
import os
import sqlite3
from collections.abc import Iterable
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from plumbnet.layout.yaml import quoted
from plumbnet.report.studies import all_done_in_words
from plumbnet.report.survey.survey_entry import SurveyEntry
from plumbnet.report.survey.survey_file import (
    NO_SURVEY,
    START_OVER,
    Unusable,
    demand_sound,
    insert,
    is_survey,
    make_tables,
    path_key,
    put_fresh,
    told_in_words,
)
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.rules import listed
from plumbnet.study.whatif import to_each_of

_PATIENCE_MS: Final = 30_000
"""How long a batch waits for readers to let go."""
_CALLED: Final = {
    "plumbnet": "version of the program",
    "rules": "rules",
    "rules_sha256": "text of the rules",
    "units": "units",
    "own_acceptances": "acceptances",
    "own_sha256": "text of the acceptances",
    "scenario": "scenario",
    "to_each": "changes",
}
"""What a survey asks, by its columns, and what a sentence calls it."""


class Book:
    """The file of a survey, open; to be used in a `with`."""

    def __init__(self, path: str | None, asked: SurveyQuery, *, anew: bool = False) -> None:
        """Open the file for a question, made where it is not there; None is one that is gone when it is closed.

        `anew` throws away what a survey has left, of whatever question, sound or damaged; what is no survey is refused
        in any case. Raises Unusable, and has changed nothing then.
        """
        name = "" if path is None else os.path.abspath(path)  # noqa: PTH100  some names have a meaning to SQLite
        is_ours = path is not None and is_survey(Path(name))
        if anew and is_ours:
            put_fresh(Path(name), asked.fields())
        with told_in_words(is_ours=is_ours):
            self._file = sqlite3.connect(name, timeout=0.0, isolation_level=None)
            try:
                self._open(asked, is_ours=is_ours)
            except BaseException:
                self._file.close()
                raise

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, _sort: type[BaseException] | None, _error: BaseException | None, _at: TracebackType | None
    ) -> None:
        self._file.close()

    @property
    def file(self) -> sqlite3.Connection:
        """The open file, to be read."""
        return self._file

    def is_met_again(self, path: str) -> bool:
        """Whether this run has met a file before; it has from now on."""
        with told_in_words():
            return self._file.execute("INSERT OR IGNORE INTO met VALUES (?)", (path_key(path),)).rowcount == 0

    def holds(self, path: str, sha256: str) -> bool:
        """Whether the answer for a file of that content is there."""
        query = "SELECT 1 FROM file WHERE path = ? AND sha256 = ?"
        with told_in_words():
            return self._file.execute(query, (path_key(path), sha256)).fetchone() is not None

    def add(self, entries: Iterable[SurveyEntry]) -> None:
        """Keep entries for good, in place of what there was of their files: all of them, or none. Raises Unusable."""
        with told_in_words():
            for entry in entries:
                self._add(entry)
            self._keep()

    def finish(self) -> None:
        """Note that the run came to its end, and which files it did not meet. Raises Unusable."""
        with told_in_words():
            self._file.execute(
                "UPDATE file SET is_present = NOT is_present WHERE is_present != (path IN (SELECT path FROM met))"
            )
            self._file.execute("UPDATE survey SET is_complete = 1")
            self._keep()

    def _open(self, asked: SurveyQuery, *, is_ours: bool) -> None:
        if not is_ours and self._holds_something():
            raise Unusable(NO_SURVEY)
        self._file.execute("PRAGMA foreign_keys = ON")
        self._file.execute("BEGIN IMMEDIATE")
        if is_ours:
            demand_sound(self._file)
            self._refuse_other(asked)
        else:
            make_tables(self._file, asked.fields())
        self._file.execute("UPDATE survey SET is_complete = 0")
        self._keep()
        self._file.execute("CREATE TEMP TABLE met (path PRIMARY KEY)")
        self._file.execute(f"PRAGMA busy_timeout = {_PATIENCE_MS}")

    def _holds_something(self) -> bool:
        """Whether a file that is no survey's is more than an empty one, which a survey may be made in."""
        asked = ("SELECT count(*) FROM sqlite_master", "PRAGMA application_id")
        return any(self._file.execute(one).fetchone() != (0,) for one in asked)

    def _refuse_other(self, asked: SurveyQuery) -> None:
        asked_now = asked.fields()
        rows = self._file.execute(f"SELECT {', '.join(_CALLED)} FROM survey").fetchall()  # noqa: S608  our own names
        if len(rows) != 1:
            raise Unusable(f"it does not say what it answers; {START_OVER}")
        differing = [
            f"{_CALLED[name]} ({_shown(name, was)}, not {_shown(name, asked_now[name])})"
            for name, was in zip(_CALLED, rows[0], strict=True)
            if was != asked_now[name]
        ]
        if differing:
            raise Unusable(f"it answers another question, with other {listed(differing)}; {START_OVER}")

    def _add(self, entry: SurveyEntry) -> None:
        path = path_key(entry.path)
        self._file.execute("DELETE FROM file WHERE path = ?", (path,))
        row = {**entry.file, "path": path, "sha256": entry.sha256, "fate": entry.fate, "is_present": 1}
        number = insert(self._file, "file", row)
        for table, rows in entry.tables():
            for each in rows:
                insert(self._file, table, {**each, "file": number})

    def _keep(self) -> None:
        """End the transaction, and begin the next at once, which nobody else can then."""
        self._file.execute("COMMIT")
        self._file.execute("BEGIN IMMEDIATE")


def _shown(name: str, value: object) -> str:
    if name == "to_each" and isinstance(value, str):
        try:
            return all_done_in_words(map(to_each_of, json.loads(value))) or "none"
        except (ValueError, LookupError, TypeError, AttributeError):
            return quoted(value)  # somebody else has written it
    return "none" if value is None else quoted(str(value))
