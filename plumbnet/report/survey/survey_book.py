"""The file of a survey: opened or refused, a batch of entries to a transaction, what is known already left alone.

SQLite in its ordinary journal: whatever ends the program, the batches that were done are there and no other is. The
right to write is held from first to last, so that a second survey is refused while others may read.
"""

import json
import os
import sqlite3
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from types import TracebackType
from typing import Final, Self

from plumbnet.layout.yaml import quoted, visible
from plumbnet.report.formats import CsvCell
from plumbnet.report.studies import all_done_in_words
from plumbnet.report.survey.survey_entry import SurveyEntry
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_tables import APPLICATION, TABLES, VERSION
from plumbnet.rules import listed
from plumbnet.study.whatif import to_each_of

_PATIENCE_MS: Final = 30_000
"""How long a batch waits for readers to let go."""
_NO_SURVEY: Final = "it is no survey, and is left as it is"
_START_OVER: Final = "with --anew the survey starts over, and what is there is lost"
_REASONS: Final = {
    "file is not a database": _NO_SURVEY,
    "database is locked": "another survey is at work on it",
    "database or disk is full": "there is no room left; what was done before is kept",
    "attempt to write a readonly database": "it may only be read",
    "unable to open database file": "it cannot be opened or made there",
}
"""What the library says, and the words for it."""
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


class Unusable(Exception):
    """A file that cannot hold the survey, or no longer; the text says why, as a sentence without the file."""


class Book:
    """The file of a survey, open; to be used in a `with`."""

    def __init__(self, path: str | None, asked: SurveyQuery, *, anew: bool = False) -> None:
        """Open the file for a question, made where it is not there; None is one that is gone when it is closed.

        `anew` throws away what a survey has left, of whatever question; what is no survey is refused in any case.
        Raises Unusable, and has changed nothing then.
        """
        with _told():
            name = "" if path is None else os.path.abspath(path)  # noqa: PTH100  some names have a meaning to SQLite
            self._file = sqlite3.connect(name, timeout=0.0, isolation_level=None)
            try:
                self._open(asked, anew=anew)
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
        with _told():
            return self._file.execute("INSERT OR IGNORE INTO met VALUES (?)", (_key(path),)).rowcount == 0

    def holds(self, path: str, sha256: str) -> bool:
        """Whether the answer for a file of that content is there."""
        query = "SELECT 1 FROM file WHERE path = ? AND sha256 = ?"
        with _told():
            return self._file.execute(query, (_key(path), sha256)).fetchone() is not None

    def add(self, entries: Iterable[SurveyEntry]) -> None:
        """Keep entries for good, in place of what there was of their files: all of them, or none. Raises Unusable."""
        with _told():
            for entry in entries:
                self._add(entry)
            self._keep()

    def finish(self) -> None:
        """Note that the run came to its end, and which files it did not meet. Raises Unusable."""
        with _told():
            self._file.execute(
                "UPDATE file SET is_present = NOT is_present WHERE is_present != (path IN (SELECT path FROM met))"
            )
            self._file.execute("UPDATE survey SET is_complete = 1")
            self._keep()

    def _open(self, asked: SurveyQuery, *, anew: bool) -> None:
        application, version = self._pragma("application_id"), self._pragma("user_version")
        is_new = application == 0 and not self._names()
        if not is_new and application != APPLICATION:
            raise Unusable(_NO_SURVEY)
        self._file.execute("PRAGMA foreign_keys = ON")
        self._file.execute("BEGIN IMMEDIATE")
        if is_new or anew:
            self._make(asked)
        else:
            self._refuse_other(asked, version)
        self._file.execute("UPDATE survey SET is_complete = 0")
        self._keep()
        self._file.execute("CREATE TEMP TABLE met (path PRIMARY KEY)")
        self._file.execute(f"PRAGMA busy_timeout = {_PATIENCE_MS}")

    def _make(self, asked: SurveyQuery) -> None:
        for sort, name in self._names():
            self._file.execute(f'DROP {sort} "{name}"')
        for statement in TABLES:
            self._file.execute(statement)
        self._file.execute(f"PRAGMA application_id = {APPLICATION}")
        self._file.execute(f"PRAGMA user_version = {VERSION}")
        self._insert("survey", {**asked.fields(), "is_complete": 0})

    def _refuse_other(self, asked: SurveyQuery, version: int) -> None:
        if version != VERSION:
            raise Unusable(f"its tables are of version {version}, not {VERSION}; {_START_OVER}")
        asked_now = asked.fields()
        there = self._file.execute(f"SELECT {', '.join(_CALLED)} FROM survey").fetchone()  # noqa: S608  our own names
        differing = [
            f"{_CALLED[name]} ({_shown(name, was)}, not {_shown(name, asked_now[name])})"
            for name, was in zip(_CALLED, there, strict=True)
            if was != asked_now[name]
        ]
        if differing:
            raise Unusable(f"it answers another question, with other {listed(differing)}; {_START_OVER}")

    def _add(self, entry: SurveyEntry) -> None:
        path = _key(entry.path)
        self._file.execute("DELETE FROM file WHERE path = ?", (path,))
        row = {**entry.file, "path": path, "sha256": entry.sha256, "fate": entry.fate, "is_present": 1}
        number = self._insert("file", row)
        for table, rows in entry.tables():
            for each in rows:
                self._insert(table, {**each, "file": number})

    def _insert(self, table: str, row: Mapping[str, CsvCell | bytes]) -> int | None:
        """Put a row into a table; its number."""
        places = ", ".join(f":{name}" for name in row)
        statement = f"INSERT INTO {table} ({', '.join(row)}) VALUES ({places})"  # noqa: S608  our own names
        return self._file.execute(statement, {name: _storable(value) for name, value in row.items()}).lastrowid

    def _keep(self) -> None:
        """End the transaction, and begin the next at once, which nobody else can then."""
        self._file.execute("COMMIT")
        self._file.execute("BEGIN IMMEDIATE")

    def _pragma(self, name: str) -> int:
        return int(self._file.execute(f"PRAGMA {name}").fetchone()[0])

    def _names(self) -> list[tuple[str, str]]:
        """What was made in the file, as sort and name."""
        query = "SELECT type, name FROM sqlite_master WHERE type IN ('table', 'view')"
        return self._file.execute(query).fetchall()


def _key(path: str) -> str | bytes:
    """A path as it stands in the file: text, or the bytes of a name that is no Unicode; `os.fsdecode` leads back."""
    try:
        path.encode()
    except UnicodeEncodeError:
        return os.fsencode(path)
    return path


def _storable(value: CsvCell | bytes) -> CsvCell | bytes:
    """A value as the file can hold it: what is no Unicode made visible."""
    return visible(value) if isinstance(value, str) and isinstance(_key(value), bytes) else value


def _shown(name: str, value: str | None) -> str:
    if name == "to_each" and value is not None:
        return all_done_in_words(map(to_each_of, json.loads(value))) or "none"
    return "none" if value is None else quoted(value)


@contextmanager
def _told() -> Iterator[None]:
    """What the library cannot do, told in words."""
    try:
        yield
    except sqlite3.Error as error:
        raise Unusable(_REASONS.get(str(error), str(error))) from error
