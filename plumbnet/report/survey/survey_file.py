"""A file that may hold a survey: whose it is by its first bytes, whether it is sound, and a fresh one in its place."""

import os
import re
import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final

from plumbnet.layout.yaml import reason_of, visible
from plumbnet.report.formats import CsvCell
from plumbnet.report.output import write_whole
from plumbnet.report.survey.survey_tables import APPLICATION, TABLES, VERSION
from plumbnet.rules import listed

NO_SURVEY: Final = "it is no survey, and is left as it is"
START_OVER: Final = "with --anew the survey starts over, and what is there is lost"
DAMAGED: Final = f"it is damaged; {START_OVER}"
_HEAD: Final = b"SQLite format 3\0"
_APPLICATION_AT: Final = slice(68, 72)  # SQLite file format, section 1.3
_BESIDE: Final = ("-journal", "-wal", "-shm")
"""What the library keeps beside a file while it writes; to a fresh one it would be another's."""
_MADE: Final = re.compile(r"CREATE (?:TABLE|INDEX|VIEW) (\w+)")
_STATEMENTS: Final[Mapping[str, str]] = {
    made[1]: statement for statement in TABLES if (made := _MADE.match(statement)) is not None
}
_REASONS: Final = {
    "file is not a database": DAMAGED,
    "database disk image is malformed": DAMAGED,
    "database is locked": "another survey is at work on it",
    "database or disk is full": "there is no room left; what was done before is kept",
    "attempt to write a readonly database": "it may only be read",
    "unable to open database file": "it cannot be opened or made there",
    "disk I/O error": "it cannot be read or written there; what was done before is kept",
}
"""What the library says, and the words for it."""


class Unusable(Exception):
    """A file that cannot hold the survey, or no longer; the text says why, as a sentence without the file."""


@contextmanager
def told_in_words(*, is_ours: bool = True) -> Iterator[None]:
    """What the library cannot do, told in words; `is_ours` says that the file says of itself that it is a survey's."""
    try:
        yield
    except sqlite3.Error as error:
        words = _REASONS.get(str(error), str(error))
        raise Unusable(words if is_ours or words != DAMAGED else NO_SURVEY) from error
    except OSError as error:
        raise Unusable(f"it cannot be written: {reason_of(error)}") from error


def is_survey(path: Path) -> bool:
    """Whether a file says of itself that it is a survey's, sound or not. Raises Unusable for what is no file at all."""
    try:
        if path.exists() and not path.is_file() and not path.is_dir():
            raise Unusable("it is no file that can hold a survey")
        with path.open("rb") as file:
            head = file.read(_APPLICATION_AT.stop)
    except OSError:
        return False  # the library says why
    return head.startswith(_HEAD) and head[_APPLICATION_AT] == APPLICATION.to_bytes(4)


def put_fresh(path: Path, asked: Mapping[str, CsvCell]) -> None:
    """A survey in which no answer stands yet, in place of one that is there; that one stays until this is whole.

    Raises Unusable where another survey is at work on it, and where it cannot be written.
    """
    with told_in_words(), closing(sqlite3.connect(path, timeout=0.0, isolation_level=None)) as old:
        try:
            old.execute("BEGIN IMMEDIATE")
        except sqlite3.OperationalError:
            raise
        except sqlite3.DatabaseError:  # so damaged that nobody can be at work on it
            pass
    with told_in_words(), closing(sqlite3.connect(":memory:", isolation_level=None)) as fresh:
        make_tables(fresh, asked)
        write_whole(path, fresh.serialize())
        for ending in _BESIDE:
            path.with_name(path.name + ending).unlink(missing_ok=True)


def make_tables(file: sqlite3.Connection, asked: Mapping[str, CsvCell]) -> None:
    """The tables of a survey, what it asks, by its columns, and what tells its file from any other."""
    for statement in TABLES:
        file.execute(statement)
    insert(file, "survey", {**asked, "is_complete": 0})
    file.execute(f"PRAGMA application_id = {APPLICATION}")
    file.execute(f"PRAGMA user_version = {VERSION}")


def insert(file: sqlite3.Connection, table: str, row: Mapping[str, CsvCell | bytes]) -> int | None:
    """Put a row into a table; its number."""
    places = ", ".join(f":{name}" for name in row)
    statement = f"INSERT INTO {table} ({', '.join(row)}) VALUES ({places})"  # noqa: S608  our own names
    return file.execute(statement, {name: _storable(value) for name, value in row.items()}).lastrowid


def path_key(path: str) -> str | bytes:
    """A path as it stands in the file: text, or the bytes of a name that is no Unicode; `os.fsdecode` leads back."""
    try:
        path.encode()
    except UnicodeEncodeError:
        return os.fsencode(path)
    return path


def _storable(value: CsvCell | bytes) -> CsvCell | bytes:
    """A value as the file can hold it: what is no Unicode made visible."""
    return visible(value) if isinstance(value, str) and isinstance(path_key(value), bytes) else value


def demand_sound(file: sqlite3.Connection) -> None:
    """Refuse a survey that is damaged, or whose tables are not of this version. Raises Unusable, sqlite3.Error."""
    if file.execute("PRAGMA quick_check(1)").fetchone() != ("ok",):
        raise Unusable(DAMAGED)
    (version,) = file.execute("PRAGMA user_version").fetchone()
    if version != VERSION:
        raise Unusable(f"its tables are of version {version}, not {VERSION}; {START_OVER}")
    there = dict(file.execute("SELECT name, sql FROM sqlite_master"))
    others = [name for name, statement in _STATEMENTS.items() if there.get(name) != statement]
    if others:
        raise Unusable(f"its tables are not those that this program makes ({listed(others)}); {START_OVER}")
