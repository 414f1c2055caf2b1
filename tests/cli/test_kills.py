"""Whatever ends a command that writes, at any of its writes: the old file stands there, or the new one.

A process that is killed outright does nothing afterwards: what it leaves is what stands on the disk at that moment. So
every write is watched in one run, and what stands there just before it is looked at.
"""

import os
import re
import sqlite3
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from running import OPEN, TRAPPED, Write, run

from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.study.whatif.bulk_changes import Supposed

COMMANDS = Path(__file__).parents[2] / "plumbnet" / "cli" / "commands"
OLD = b"the old file"
CALLS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "board": (("a.yaml", "--at-once", "1", "-o", "new.html"), ("new.html",)),
    "chart": (("a.yaml", "--of", "ladder", "-o", "new.svg"), ("new.svg",)),
    "class": (("c.yaml", "-o", "new.html"), ("new.html",)),
    "compare": (("a.yaml", "b.yaml", "-o", "new.html"), ("new.html",)),
    "draw": (("a.yaml", "-o", "new.svg"), ("new.svg",)),
    "exercise": (("-o", "new.md", "--key"), ("new.md", "new-1.svg", "new-key-1.svg")),
    "export": (("a.yaml", "--force", "-o", "."), ("parts.csv", "pipes.csv", "layout.csv", "tanks.csv")),
    "import": (("t/parts.csv", "t/pipes.csv", "t/layout.csv", "--force", "-o", "new.yaml"), ("new.yaml",)),
    "new": (("house", "-o", "new.yaml"), ()),
    "remedies": (("b.yaml", "--apply", "1", "--force", "-o", "new.yaml"), ("new.yaml",)),
    "report": (("a.yaml", "-o", "new.html"), ("new.html",)),
    "review": (("a.yaml", "-o", "new.html"), ("new.html",)),
    "survey": (("a.yaml", "--chart", "new.svg"), ("new.svg",)),
}
"""Every command that writes files, with the words it is called by, and the files that stood there before."""
EVENTS = ("open", "os.chmod", "os.link", "os.mkdir", "os.remove", "os.rename", "os.truncate", "shutil.move")
"""What the interpreter tells of before it is done (library reference, audit events table)."""

_watching: list[Callable[[], None]] = []
_opened: set[str] = set()
"""Names of what was opened to be written."""


def _hook(event: str, given: tuple[object, ...]) -> None:
    if _watching and event in EVENTS and (event != "open" or _writes(given)):
        look = _watching.pop()
        if event == "open" and isinstance(given[0], str):
            _opened.add(Path(given[0]).name)
        look()
        _watching.append(look)


def _writes(given: tuple[object, ...]) -> bool:
    flags = given[2]
    return isinstance(flags, int) and bool(flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT))


sys.addaudithook(_hook)


@contextmanager
def watched(look: Callable[[], None]) -> Iterator[None]:
    """Look before every write."""
    _watching.append(look)
    _opened.clear()
    try:
        yield
    finally:
        _watching.clear()


def test_every_command_that_writes_is_among_them() -> None:
    writing = re.compile(r"from plumbnet\.cli\.output_file import .*\b(save|save_new|Out)\b")
    found = {each.stem for each in COMMANDS.glob("*.py") if writing.search(each.read_text(encoding="utf-8"))}
    assert found == set(CALLS)


@pytest.mark.parametrize("command", CALLS)
def test_old_file_or_the_new_one_stands_there_before_each_write(command: str, write: Write) -> None:
    write("a.yaml", OPEN)
    write("b.yaml", TRAPPED)
    write("c.yaml", "plumbnet-results: 1\n")
    Path("t").mkdir()
    assert run("export", "a.yaml", "-o", "t").exit_code == 0
    words, there = CALLS[command]
    for name in there:
        Path(name).write_bytes(OLD)
    seen = dict[Path, list[bytes]]()

    def look() -> None:
        for path in Path().iterdir():
            if path.is_file() and path.suffix != ".part":
                seen.setdefault(path, []).append(path.read_bytes())

    with watched(look):
        assert run(command, *words).exit_code in {0, 1}
    look()
    assert not _opened & set(there)
    new = {path: path.read_bytes() for path in Path().iterdir() if path.is_file()}
    assert not [path for path in new if path.suffix == ".part"]
    for path, contents in seen.items():
        before = [OLD] if path.name in there else []
        assert [*dict.fromkeys(contents)] == [*dict.fromkeys([*before, new[path]])], path
    written = [name for name in there or ("new.yaml",) if new[Path(name)] != OLD]
    assert written == [*(there or ("new.yaml",))]
    assert len(seen[Path("a.yaml")]) > 3 * len(written)  # made, given its rights, renamed: and looked at each time


ASKED = SurveyQuery(None, None, Supposed())


def rows(file: Path) -> list[list[tuple[object, ...]]]:
    """All that a survey holds, less the numbers of its files."""
    held = sqlite3.connect(file)
    try:
        tables = ("file", "heater", "finding", "error", "note", "survey")
        found = [held.execute(f"SELECT * FROM {table}").fetchall() for table in tables]  # noqa: S608  our own names
    finally:
        held.close()
    return [sorted([row[1:] for row in table], key=repr) for table in found]


@pytest.mark.parametrize("anew", [(), ("--anew",)])
def test_survey_killed_before_any_of_its_statements_goes_on_and_comes_to_the_same(
    anew: tuple[str, ...], write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    plans = [write(f"{name}.yaml", text) for name, text in (("a", OPEN), ("b", TRAPPED), ("c", OPEN))]
    run("survey", *plans, "--into", "whole")
    if anew:
        with Book("s", ASKED) as book:
            book.finish()
    states = dict[bytes, Path]()
    monkeypatch.setattr("plumbnet.cli.surveying.survey_jobs.MOST_FILES", 1)
    real = sqlite3.connect

    def look(_statement: str = "") -> None:
        files = [path for path in (Path("s"), Path("s-journal")) if path.exists()]
        state = b"".join(path.read_bytes() for path in files)
        if files and state not in states:
            left = Path(f"left-{len(states)}")
            left.mkdir()
            for path in files:
                (left / path.name).write_bytes(path.read_bytes())
            states[state] = left

    def connect(*given: str, **named: float | None) -> sqlite3.Connection:
        made = real(*given, **named)  # type: ignore[call-overload]  # as it is called
        assert isinstance(made, sqlite3.Connection)
        made.set_trace_callback(look)
        return made

    monkeypatch.setattr(sqlite3, "connect", connect)
    with watched(look):
        run("survey", *plans, "--into", "s", *anew)
    look()
    monkeypatch.setattr(sqlite3, "connect", real)
    assert len(states) > 6
    for left in states.values():
        done = run("survey", *plans, "--into", str(left / "s"))
        assert (done.exit_code, done.stderr) == (1, "")
        assert rows(left / "s") == rows(Path("whole")), left
