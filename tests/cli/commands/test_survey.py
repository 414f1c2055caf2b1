"""Many layouts at once: what is kept and said, what a kill leaves, what is refused."""

import json
import os
import re
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures.process import BrokenProcessPool
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from conftest import layout
from running import CONTROL, FAULTY, HOSTILE, OPEN, TRAPPED, Write, document, ended, on_a_terminal, run

from plumbnet.cli.commands import survey as command
from plumbnet.cli.surveying import survey_jobs as surveying
from plumbnet.study.long_runs.parallel import answers

METERED = layout("street -> meter -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
CHECKED = ("--each", "meter.check=true")
INTO = ("--into", "s.sqlite")
SYSTEMS = Path(__file__).parents[3] / "systems"
Kept = list[dict[str, Any]]


def kept(query: str, file: str = "s.sqlite") -> Kept:
    with closing(sqlite3.connect(file)) as connection:
        connection.row_factory = sqlite3.Row
        return [dict(row) for row in connection.execute(query)]


def contents(file: str) -> list[Kept]:
    """All that a survey has kept, less the numbers of its files, which are as they came."""
    of_file = "(SELECT path FROM file WHERE id = file) AS path, * FROM"
    queries = (
        "SELECT * FROM survey",
        "SELECT * FROM file ORDER BY path",
        *(f"SELECT {of_file} {table} ORDER BY path, {table}.rowid" for table in ("heater", "finding", "error")),
    )
    rows = [kept(query, file) for query in queries]
    return [[{name: one for name, one in row.items() if name not in {"id", "file"}} for row in table] for table in rows]


@pytest.fixture
def five(write: Write) -> None:
    """A folder with a layout of each sort, and one that is none."""
    Path("plans").mkdir()
    for name, text in {"a": METERED, "b": TRAPPED, "c": OPEN, "d": FAULTY, "e": "no: layout\n"}.items():
        write(f"plans/{name}.yaml", text)


@pytest.mark.usefixtures("five")
def test_what_if_for_all_says_which_heaters_become_trapped() -> None:
    result = run("survey", "plans", *CHECKED)
    assert (result.exit_code, result.stderr) == (2, "")
    assert "made in 1, nothing to change in 2, " in result.stdout
    (turned,) = [line for line in result.stdout.splitlines() if line.startswith("- plans/a.yaml:9: ")]
    assert " heater: open -> trapped" in turned
    assert turned.endswith("stopped by meter")
    assert '- plans/d.yaml:2: unknown kind "mian"' in result.stdout
    assert re.search(r"trapped-expansion +error +1 +2 +2\n", result.stdout)


def test_status_is_0_where_all_is_fine_and_1_where_a_heater_is_trapped_or_would_be(write: Write) -> None:
    write("a.yaml", METERED)
    assert run("survey", "a.yaml").exit_code == 0
    assert run("survey", "a.yaml", *CHECKED).exit_code == 1
    assert run("survey", write("b.yaml", TRAPPED)).exit_code == 1


@pytest.mark.usefixtures("five")
def test_json_says_the_same_and_the_file_holds_it() -> None:
    said = document(run("survey", "plans", *INTO, *CHECKED, "--format", "json"))
    assert said["files"]["checked"] == 3
    assert said["heaters"]["before"] == {"open": 2, "on-demand": 0, "controlled": 0, "trapped": 1, "sealed": 0}
    assert said["heaters"]["after"]["trapped"] == 2
    assert said["became_trapped"]["first"][0]["path"] == "plans/a.yaml"
    (row,) = kept("SELECT * FROM became_trapped")
    assert (row["path"], row["line"], row["name"], row["after_stopped_by"]) == ("plans/a.yaml", 9, "heater", "meter")
    assert (row["verdict"], row["after_verdict"]) == ("open", "trapped")
    assert row["after_opens_first_pa"] == pytest.approx(150 * 6894.757)
    assert [row["path"] for row in kept("SELECT path FROM trapped")] == ["plans/b.yaml"]


def test_systems_of_the_town_are_surveyed_with_a_check_behind_every_main(write: Write) -> None:
    write("x", "")
    said = document(run("survey", str(SYSTEMS), "--behind", "main=check_valve", "--format", "json"))
    assert said["files"]["what_if"]["made"] > 30
    assert said["files"]["what_if"]["refused"] == 0
    assert said["heaters"]["after"]["open"] < said["heaters"]["before"]["open"]
    assert {one["after"] for one in said["became_trapped"]["first"]} <= {"trapped", "sealed"}


@pytest.mark.usefixtures("five")
def test_second_run_asks_only_what_is_new_or_changed_and_counts_not_what_is_gone(
    write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []
    real = surveying.SurveyJob._entry  # noqa: SLF001  watched

    def watched(self: surveying.SurveyJob, target: Any) -> Any:  # noqa: ANN401  as it is
        asked.append(target.file)
        return real(self, target)

    monkeypatch.setattr(surveying.SurveyJob, "_entry", watched)
    first = run("survey", "plans", *INTO, *CHECKED)
    assert asked == [f"plans/{name}.yaml" for name in "abcde"]
    asked.clear()
    assert run("survey", "plans", *INTO, *CHECKED).stdout == first.stdout
    assert asked == []
    write("plans/b.yaml", OPEN)
    write("plans/f.yaml", METERED)
    Path("plans/c.yaml").unlink()
    again = run("survey", "plans", *INTO, *CHECKED)
    assert asked == ["plans/b.yaml", "plans/f.yaml"]
    assert "1 of an earlier run no longer" in again.stdout
    assert "all             1     2        3\n" in again.stdout
    write("plans/c.yaml", OPEN)
    asked.clear()
    assert "no longer there" not in run("survey", "plans", *INTO, *CHECKED).stdout
    assert asked == []


@pytest.mark.usefixtures("five")
@pytest.mark.parametrize(
    ("others", "said"),
    [
        ((), "changes (set every meter: check yes, not none)"),
        (
            ("--behind", "main=check_valve"),
            "changes (set every meter: check yes, not fit a check valve behind every main)",
        ),
        ((*CHECKED, "--rules", "ipc-2021"), 'rules (none, not "ipc-2021") and text of the rules (none, not "'),
        ((*CHECKED, "--units", "metric"), 'units (none, not "metric")'),
        ((*CHECKED, "--scenario", "repair"), 'scenario (none, not "repair")'),
    ],
)
def test_other_question_is_refused_until_it_is_asked_anew(others: tuple[str, ...], said: str) -> None:
    run("survey", "plans", *INTO, *CHECKED)
    before = Path("s.sqlite").read_bytes()
    result = run("survey", "plans", *INTO, *others)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(f"s.sqlite: it answers another question, with other {said}")
    assert result.stderr.endswith("; with --anew the survey starts over, and what is there is lost\n")
    assert Path("s.sqlite").read_bytes() == before
    assert run("survey", "plans", *INTO, *others, "--anew").stderr == ""
    assert len(kept("SELECT * FROM file")) == 5


@pytest.mark.usefixtures("five")
def test_other_version_of_the_program_is_another_question(monkeypatch: pytest.MonkeyPatch) -> None:
    run("survey", "plans", *INTO)
    monkeypatch.setattr("plumbnet.report.survey.survey_query.program_version", lambda: "9.9")
    assert 'version of the program ("0.1.0", not "9.9")' in run("survey", "plans", *INTO).stderr


@pytest.mark.usefixtures("five")
@pytest.mark.parametrize("anew", [(), ("--anew",)])
@pytest.mark.parametrize("content", [b"plumbnet: 1\n", b"\0" * 5000, b"x" * 100_000])
def test_file_that_is_no_survey_is_left_as_it_is(content: bytes, anew: tuple[str, ...]) -> None:
    Path("s.sqlite").write_bytes(content)
    result = run("survey", "plans", *INTO, *anew)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("s.sqlite: it is no survey")
    assert Path("s.sqlite").read_bytes() == content


@pytest.mark.usefixtures("five")
def test_data_of_another_program_is_left_as_it_is() -> None:
    with closing(sqlite3.connect("s.sqlite")) as other:
        other.execute("CREATE TABLE file (path)")
    assert run("survey", "plans", *INTO, "--anew").stderr.startswith("s.sqlite: it is no survey")
    assert kept("SELECT name FROM sqlite_master") == [{"name": "file"}]


@pytest.mark.usefixtures("five")
@pytest.mark.parametrize(
    ("into", "said"),
    [("no/where.sqlite", "it cannot be opened or made there"), ("plans", "it cannot be opened or made there")],
)
def test_place_where_no_file_can_be_is_told(into: str, said: str) -> None:
    assert run("survey", "plans", "--into", into).stderr == f"{into}: {said}\n"


@pytest.mark.usefixtures("five")
def test_second_survey_at_once_is_refused_while_others_may_read() -> None:
    run("survey", "plans", *INTO)
    with closing(sqlite3.connect("s.sqlite", isolation_level=None)) as first:
        first.execute("BEGIN IMMEDIATE")
        assert run("survey", "plans", *INTO).stderr == "s.sqlite: another survey is at work on it\n"
        assert len(kept("SELECT * FROM file")) == 5


@pytest.mark.usefixtures("five")
def test_full_disk_is_told_and_what_was_done_is_kept(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    run("survey", "plans", *INTO)
    for number in range(200):
        write(f"plans/{number}.yaml", f"title: {'long ' * 900}\n{TRAPPED}")

    class Small(sqlite3.Connection):
        def execute(self, *given: Any) -> Any:  # noqa: ANN401  as it is
            super().execute("PRAGMA max_page_count = 40")
            return super().execute(*given)

    real = sqlite3.connect
    with monkeypatch.context() as full:
        full.setattr(sqlite3, "connect", lambda *given, **named: real(*given, factory=Small, **named))
        said = run("survey", "plans", *INTO).stderr
    assert said == "s.sqlite: there is no room left; what was done before is kept\n"
    assert len(kept("SELECT * FROM file")) >= 5


@pytest.mark.usefixtures("write")
def test_names_and_titles_of_any_sort_are_kept_and_hurt_nobody() -> None:
    Path("plans").mkdir()
    names = ["two\nlines'; DROP TABLE file; --.yaml", '"quoted".yaml', "\x1b[2J.yaml", os.fsdecode(b"\xff\xfe.yaml")]
    for name in names:
        Path("plans", name).write_text(HOSTILE + METERED, encoding="utf-8")
    Path("plans", os.fsdecode(b"\xff.yaml")).write_text(FAULTY, encoding="utf-8")
    result = run("survey", "plans", *INTO, *CHECKED)
    assert result.exit_code == 2
    assert not any(sign in result.stdout for sign in CONTROL)
    paths = [os.fsdecode(row["path"]) for row in kept("SELECT path FROM file WHERE fate = 'checked'")]
    assert sorted(paths) == sorted(f"plans/{name}" for name in names)
    assert {row["title"] for row in kept("SELECT title FROM file")} == {None, "\x1b[2J\u202eevil\x07"}
    assert run("survey", "plans", *INTO, *CHECKED).stdout == result.stdout
    json.loads(run("survey", "plans", *INTO, *CHECKED, "--format", "json").stdout)


def test_change_that_a_layout_refuses_is_its_error_and_not_the_end(write: Write) -> None:
    write("a.yaml", METERED)
    write("b.yaml", OPEN)
    result = run("survey", "a.yaml", "b.yaml", *INTO, "--each", "meter.kind=vent", "--each", "meter.elevation=40")
    assert result.exit_code == 2
    assert "nothing to change in 1, cannot be made" in result.stdout
    (refused,) = kept("SELECT path, text FROM error JOIN file ON file = id")
    assert refused["path"] == "a.yaml"
    assert refused["text"].startswith("meter would be a vent")
    assert [(row["verdict"], row["after_verdict"]) for row in kept("SELECT * FROM heater")] == [
        ("open", None),
        ("open", "open"),
    ]


def test_failure_of_the_program_in_one_file_is_told_and_tried_again(
    write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    write("a.yaml", METERED)
    with monkeypatch.context() as broken:
        broken.setattr("plumbnet.check", lambda *_, **__: 1 // 0)
        result = run("survey", "a.yaml", *INTO)
    assert result.exit_code == 2
    assert "- a.yaml: the program failed on this file, by a mistake of" in result.stdout
    assert run("survey", "a.yaml", *INTO).exit_code == 0


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--each", "metre.check=true"), '--each metre: unknown kind "metre": did you mean "meter"?\n'),
        (("--scheduler", "x:1", "--jobs", "2"), "--jobs counts processes of this machine, and --scheduler has the"),
        (("--rules", "none-such"), 'no rule profile is called "none-such"'),
        (("--chart", "c.doc"), '"c.doc" does not say how to write it'),
        (("-",), "a survey reads folders and files; what comes by standard input is a matter for check\n"),
    ],
)
def test_what_cannot_be_asked_is_refused_before_anything_is_read(
    write: Write, arguments: tuple[str, ...], said: str
) -> None:
    result = run("survey", write("a.yaml", METERED), *INTO, *arguments)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(said)
    assert not Path("s.sqlite").exists()


def test_folder_without_a_layout_is_told(write: Write) -> None:
    Path("plans").mkdir()
    write("plans/x.yaml", "no: layout\n")
    assert run("survey", "plans").stderr.startswith("none of the files found")
    Path("plans/x.yaml").unlink()
    assert "- plans: no file in this folder" in run("survey", "plans").stdout


@pytest.mark.usefixtures("five")
def test_chart_is_drawn() -> None:
    run("survey", "plans", "--chart", "c.svg", *CHECKED)
    assert "2 with the what-if" in Path("c.svg").read_text(encoding="utf-8")


@pytest.mark.usefixtures("five")
def test_bar_shows_how_far_it_is() -> None:
    assert b"surveying" in on_a_terminal("survey", "plans", status=2, errors=True)


@pytest.mark.usefixtures("five")
@pytest.mark.parametrize(
    ("error", "status", "said"),
    [
        (KeyboardInterrupt(), 130, "interrupted; 5 of 5 files were done"),
        (BrokenProcessPool(), 2, "a process ended without its answer, and with --jobs 1 its file can be found"),
        (surveying.OtherVersion("9.9"), 2, "a worker has plumbnet 9.9, and every one must have 0.1.0"),
    ],
)
def test_early_end_is_told_and_keeps_what_is_done(
    monkeypatch: pytest.MonkeyPatch, error: BaseException, status: int, said: str
) -> None:
    def ended(*given: Any, **named: Any) -> Iterator[Any]:  # noqa: ANN401  a stand-in
        yield from answers(*given, **named)
        raise error

    monkeypatch.setattr(command, "answers", ended)
    result = run("survey", "plans", *INTO)
    assert (result.exit_code, result.stdout) == (status, "")
    assert result.stderr == f"{said}; with --into what was done is kept, and the same command goes on from there\n"
    assert kept("SELECT is_complete, count(*) AS files FROM survey, file") == [{"is_complete": 0, "files": 5}]


HELD = """
import sys
from plumbnet.cli import run
from plumbnet.cli.surveying import survey_jobs

stop, *sys.argv = sys.argv[1:]
read = survey_jobs.data_of

def held(target):
    if target.file == stop:
        print("held", flush=True)
        sys.stdin.read()
    return read(target)

survey_jobs.data_of = held
run.run_asked()
"""
"""The program, but that it stands still before it reads the file that is named first."""


@pytest.mark.skipif(not hasattr(os, "killpg"), reason="groups of processes are a thing of POSIX")
def test_survey_that_is_killed_resumes_and_comes_to_the_same(write: Write) -> None:
    Path("plans").mkdir()
    for number in range(10 * surveying.MOST_FILES):
        write(f"plans/{number:03}.yaml", FAULTY if number % 7 == 6 else (TRAPPED if number % 3 == 0 else METERED))
    run("survey", "plans", "--into", "whole.sqlite", *CHECKED)
    stop = f"plans/{9 * surveying.MOST_FILES + 3:03}.yaml"
    arguments = ["survey", "plans", *INTO, *CHECKED, "--jobs", "2"]
    command = [sys.executable, "-c", HELD, stop, "plumbnet", *arguments]
    with subprocess.Popen(  # noqa: S603  ours
        command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, start_new_session=True
    ) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == b"held\n"
        process.kill()
        process.wait()
        assert ended(process.pid)
    before = kept("SELECT id, path FROM file ORDER BY id")
    assert 2 * surveying.MOST_FILES <= len(before) < 9 * surveying.MOST_FILES
    assert len(before) % surveying.MOST_FILES == 0
    assert run(*arguments, "--format", "json").exit_code == 2
    assert kept("SELECT id, path FROM file ORDER BY id")[: len(before)] == before
    assert contents("s.sqlite") == contents("whole.sqlite")
