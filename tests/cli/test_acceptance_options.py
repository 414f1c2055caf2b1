"""Whose acceptances count: the options, in the commands that have them, and what is left over of a list."""

import json
from pathlib import Path

import pytest
from conftest import layout
from running import TRAPPED, Write, document, run

from plumbnet.cli.acceptance_options import idle_entries
from plumbnet.rules.accepting.own_acceptances import OwnAcceptance, OwnAcceptances

SEALED = layout("street -> cv -> heater -> tap.hot")
LIST = "plumbnet-acceptances: 1\naccept:\n"


def accepting(text: str, *findings: str) -> str:
    said = (f"  - {{finding: {one}, part: heater, reason: owner says ok}}\n" for one in findings)
    return text + "accept:\n" + "".join(said)


@pytest.fixture
def trusted(write: Write) -> str:
    """A trapped heater whose applicant accepts that."""
    return write("trusted.yaml", accepting(TRAPPED, "trapped-expansion"))


@pytest.fixture
def own(write: Write) -> str:
    """The inspector's list: one entry for the trapped heater and one for nothing that is found."""
    return write(
        "own.yaml",
        f"{LIST}  - {{file: trusted.yaml, finding: trapped-expansion, part: heater, reason: tank ordered}}\n"
        "  - {file: other.yaml, finding: heat-soak, part: heater, reason: seen on site}\n",
    )


def test_no_valve_and_owner_says_ok_is_no_longer_fine(write: Write) -> None:
    made = run("check", write("f.yaml", accepting(SEALED, "sealed-heater", "relief-missing", "trapped-expansion")))
    assert made.exit_code == 1
    assert "No findings" not in made.stdout
    shown = " ".join(made.stdout.split())
    for line, why in (
        (19, "it is a danger to life, which nobody can accept."),
        (20, "no file can accept this of itself."),
    ):
        assert f'The applicant accepts this (line {line}): "owner says ok". It stands: {why}' in shown


def test_what_the_applicant_accepts_has_an_exit_status_of_its_own_and_is_said(trusted: str) -> None:
    made = run("check", trusted)
    assert made.exit_code == 3
    assert "\nNo findings; 1 accepted by the applicant: trapped-expansion (heater).\n" in made.stdout
    assert "\nNo findings.\n" not in made.stdout


def test_nothing_that_a_file_accepts_counts_where_none_shall(trusted: str) -> None:
    made = run("check", "--no-accept", trusted)
    assert made.exit_code == 1
    said = (
        'The applicant accepts this (line 22): "owner says ok". It stands: acceptances in the file do not count in this'
    )
    assert said in " ".join(made.stdout.split())


def test_list_decides_and_its_idle_entries_are_told_with_their_line(trusted: str, own: str) -> None:
    made = run("check", "--own-acceptances", own, trusted)
    assert made.exit_code == 0
    assert "No findings; 1 accepted by the inspector: trapped-expansion (heater).\n" in made.stdout
    assert "accepted by the inspector in own.yaml, line 3\n" in made.stdout
    assert "Reason given: tank ordered\n" in made.stdout
    idle = "heat-soak of heater in other.yaml is accepted here and was not found"
    assert f"  note: own.yaml:4: list of acceptances: {idle}\n" in made.stdout


def test_idle_entries_stand_in_every_format(trusted: str, own: str) -> None:
    for form in ("summary", "json", "sarif", "junit", "csv"):
        made = run("check", "--own-acceptances", own, "--format", form, trusted)
        assert made.exit_code == 0
        assert "heat-soak of heater in other.yaml is accepted here and was not found" in made.stdout


def test_json_says_who_decides_and_who_accepts(trusted: str, own: str) -> None:
    (report,) = document(run("check", "--own-acceptances", own, "--format", "json", trusted))["reports"]
    (accepted,) = report["accepted"]
    assert (accepted["by"], accepted["file"], accepted["line"], accepted["reason"]) == (
        "inspector",
        "own.yaml",
        3,
        "tank ordered",
    )
    assert report["accepted_by"] == {"applicant": 0, "inspector": 1}
    assert report["own_acceptances"]["file"] == "own.yaml"
    (report,) = document(run("check", "--no-accept", "--format", "json", trusted))["reports"]
    assert report["own_acceptances"] == {"file": None, "sha256": None}
    (claim,) = report["accepted_in_vain"]
    assert (claim["by"], claim["line"], claim["why"]) == (
        "applicant",
        22,
        "acceptances in the file do not count in this review",
    )


def test_sarif_tells_a_word_under_review_from_one_that_is_refused(write: Write, trusted: str, own: str) -> None:
    def suppressions(*arguments: str) -> dict[str, list[tuple[str, str]]]:
        (one,) = json.loads(run("check", "--format", "sarif", *arguments).stdout)["runs"]
        return {each["ruleId"]: [(by["kind"], by["status"]) for by in each["suppressions"]] for each in one["results"]}

    sealed = write("sealed.yaml", accepting(SEALED, "sealed-heater"))
    assert suppressions(sealed)["sealed-heater"] == [("inSource", "rejected")]
    assert suppressions(trusted) == {"trapped-expansion": [("inSource", "accepted")]}
    assert suppressions("--no-accept", trusted) == {"trapped-expansion": [("inSource", "underReview")]}
    assert suppressions("--own-acceptances", own, trusted) == {"trapped-expansion": [("external", "accepted")]}


def test_csv_tells_a_word_in_vain_behind_the_finding_that_stands(trusted: str) -> None:
    rows = [row.split(",") for row in run("check", "--no-accept", "--format", "csv", trusted).stdout.splitlines()]
    assert [row[0] for row in rows if row[4] == "trapped-expansion"] == ["finding", "claimed"]


@pytest.mark.parametrize(
    ("command", "status"),
    [
        (("compare", "trusted.yaml", "trusted.yaml"), 0),
        (("report", "trusted.yaml", "-o", "out.html"), 1),
        (("whatif", "trusted.yaml", "--set", "heater.setpoint=150 degF"), 1),
        (("sweep", "trusted.yaml"), 1),
        (("survey", "trusted.yaml"), 1),
        (("review", "trusted.yaml"), 1),
    ],
)
def test_every_command_that_judges_can_be_told_whose_word_counts(
    trusted: str, own: str, command: tuple[str, ...], status: int
) -> None:
    assert trusted == "trusted.yaml"
    assert run(*command, "--no-accept").exit_code == status
    made = run(*command, "--own-acceptances", own)
    assert made.exit_code == 0
    if command[0] != "sweep":  # other worlds may show what an entry is about
        assert "own.yaml:4: list of acceptances: heat-soak of heater in other.yaml" in made.stderr


def test_survey_counts_by_whom_and_has_the_status_of_the_applicants_word(trusted: str) -> None:
    made = run("survey", trusted)
    assert made.exit_code == 3
    assert "- 1 accepted by the applicant, each with its reason: trapped-expansion\n" in made.stdout


def test_list_that_cannot_be_read_is_told_with_line_and_caret(write: Write, trusted: str) -> None:
    bad = write("bad.yaml", f"{LIST}  - {{file: a, finding: heat-sok, part: h, reason: so}}\n")
    made = run("check", "--own-acceptances", bad, trusted)
    assert made.exit_code == 2
    assert made.stderr == (
        'bad.yaml:3:24: no finding is called "heat-sok": did you mean "heat-soak"?\n'
        "  3 |   - {file: a, finding: heat-sok, part: h, reason: so}\n"
        "    |                        ^~~~~~~~\n"
    )
    assert run("check", "--own-acceptances", "none.yaml", trusted).stderr == "none.yaml: no such file or directory\n"
    both = run("check", "--own-acceptances", bad, "--no-accept", trusted)
    assert (both.exit_code, both.stderr) == (
        2,
        "--own-acceptances decides by a list and --no-accept accepts nothing at all; give one of them\n",
    )


def test_entries_that_were_of_use_are_not_idle() -> None:
    entry = OwnAcceptance(file="a.yaml", finding="heat-soak", part="heater", reason="so")
    own = OwnAcceptances("own.yaml", "ab", (entry, entry), (3, 4))
    noted = idle_entries(own, {3})
    assert noted is not None
    assert [one.line for one in noted.faults] == [4]
    assert idle_entries(own, {3, 4}) is None
    assert idle_entries(None, ()) is None


def test_python_takes_the_path_of_a_list(trusted: str, own: str) -> None:
    import plumbnet  # noqa: PLC0415  as a notebook does

    assert plumbnet.check(Path(trusted), acceptances=own).is_fine
    assert not plumbnet.check(Path(trusted), acceptances=plumbnet.OwnAcceptances()).is_fine
