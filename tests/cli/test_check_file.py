"""One file to its outcome; what a folder holds beside layouts."""

import json
from pathlib import Path

import pytest
from conftest import layout
from running import FAULTY, OPEN, TRAPPED, Write, run

from plumbnet.cli.check_file import CheckFile
from plumbnet.cli.file_search.file_targets import Target
from plumbnet.report.output.writer import Fate, FileOutcome
from plumbnet.report.text.text_writers import LineWriter
from plumbnet.rules.circuit_rules import given_rules
from plumbnet.rules.facts.verdict_words import Verdict


def asked(file: str, *, is_named: bool = True, given: bytes | None = None, rules: str | None = None) -> FileOutcome:
    return CheckFile(LineWriter(), rules=None if rules is None else given_rules(rules))(
        Target(file, is_named=is_named, given=given)
    )


def test_layout_is_checked_and_counted(write: Write) -> None:
    outcome = asked(write("trapped.yaml", TRAPPED))
    assert (outcome.file, outcome.fate, outcome.verdicts) == ("trapped.yaml", Fate.CHECKED, (Verdict.TRAPPED,))
    assert [one.name for one in outcome.findings] == ["trapped-expansion"]
    (answer,) = outcome.piece.answers
    assert answer.startswith("trapped.yaml: 1 trapped; ")
    assert answer.endswith(" trapped-expansion\n")
    assert outcome.words == ""


def test_what_came_by_standard_input_is_called_so() -> None:
    outcome = asked("-", given=OPEN.encode())
    assert outcome.piece.answers == ("standard input: 1 open\n",)
    assert asked("-", given=FAULTY.encode()).words.startswith("standard input:2:19: ")


@pytest.mark.parametrize("is_named", [True, False])
def test_faulty_layout_is_not_understood_wherever_it_was_found(write: Write, *, is_named: bool) -> None:
    outcome = asked(write("faulty.yaml", FAULTY), is_named=is_named)
    assert outcome.fate is Fate.NOT_UNDERSTOOD
    assert outcome.words.startswith('faulty.yaml:2:19: unknown kind "mian"')


@pytest.mark.parametrize(
    "text",
    [
        "services: {web: {image: nginx}}\n",
        "# a plumbnet layout may come here\nservices: {}\n",
        "- plumbnet\n- more\n",
        "plumbnet\n",
        "parts: {plumbnet: 1}\n",
    ],
)
def test_other_yaml_in_a_folder_is_no_layout_but_named_it_is_not_understood(write: Write, text: str) -> None:
    write("other.yaml", text)
    assert asked("other.yaml", is_named=False).fate is Fate.NO_LAYOUT
    assert asked("other.yaml").fate is Fate.NOT_UNDERSTOOD


def test_file_that_speaks_of_the_program_and_cannot_be_read_is_told(write: Write) -> None:
    assert asked(write("broken.yaml", "plumbnet: 1\nparts: [\n"), is_named=False).fate is Fate.NOT_UNDERSTOOD
    assert asked(write("broken.yaml", "services: [\n"), is_named=False).fate is Fate.NO_LAYOUT


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be"])
def test_layout_in_another_encoding_is_not_passed_over(write: Write, encoding: str) -> None:
    Path(write("other.yaml", "")).write_bytes(OPEN.encode(encoding))
    outcome = asked("other.yaml", is_named=False)
    assert outcome.fate is Fate.NOT_UNDERSTOOD
    assert "encoding UTF-8" in outcome.words or "U+0000" in outcome.words


def test_file_that_went_away_is_told(write: Write) -> None:
    write("here.yaml", OPEN)
    assert asked("gone.yaml", is_named=False).words == "gone.yaml: no such file or directory"


def test_folder_that_cannot_be_looked_into_says_why() -> None:
    outcome = CheckFile(LineWriter())(Target("plans", trouble="Permission denied"))
    assert (outcome.fate, outcome.words) == (Fate.NOT_UNDERSTOOD, "plans: permission denied")


def test_profile_that_the_file_names_and_nobody_knows_is_told(write: Write) -> None:
    outcome = asked(write("f.yaml", f"rules: genral\n{OPEN}"))
    assert outcome.words.startswith("f.yaml:1:8: no rule profile ")
    assert '"genral"' in outcome.words
    assert asked("f.yaml", rules="general").fate is Fate.CHECKED


BAD_SCENARIO = "\nscenarios: {good: {change: [{close: valve}]}, bad: {change: [{close: valvv}]}}\n"
SENTENCE = 'no part is called "valvv": did you mean "valve"?'


@pytest.mark.parametrize("output", ["text", "summary", "json", "sarif", "junit", "csv"])
def test_layout_with_a_bad_scenario_is_checked_and_the_scenario_told(write: Write, output: str) -> None:
    write("house.yaml", layout("street -> valve -> heater -> tap.hot") + BAD_SCENARIO)
    told = run("check", "house.yaml", "--format", output)
    assert told.exit_code == 2
    assert "heater" in told.stdout or output == "summary"
    where = told.stderr if output in {"text", "summary"} else told.stdout
    plain = where.replace('\\"', '"').replace('""', '"').replace("&quot;", '"')
    assert SENTENCE in plain
    if output == "json":
        document = json.loads(told.stdout)
        assert (len(document["reports"]), [error["text"] for error in document["errors"]]) == (1, [SENTENCE])
    if output == "junit":
        assert 'name="scenarios"' in told.stdout
    if output == "sarif":
        assert "house.yaml has scenarios that were not checked: " in told.stdout
