from pathlib import Path

import pytest
from reviewing import requirement, review, written
from running import CONTROL, FAULTY, HOSTILE, OPEN, TRAPPED, Write, document, run

import plumbnet


@pytest.fixture
def two(write: Write) -> Write:
    """A layout that is open and its revision that is trapped."""
    write("open.yaml", OPEN)
    write("trapped.yaml", TRAPPED)
    return write


@pytest.mark.usefixtures("two")
def test_status_is_1_where_something_became_worse_and_0_otherwise() -> None:
    worse = run("compare", "open.yaml", "trapped.yaml")
    assert (worse.exit_code, worse.stderr) == (1, "")
    assert "heater is worse: open before" in worse.stdout
    better = run("compare", "trapped.yaml", "open.yaml")
    assert better.exit_code == 0
    assert "heater is better: trapped before" in better.stdout
    assert run("compare", "trapped.yaml", "trapped.yaml").exit_code == 0


@pytest.mark.parametrize("names", [("open.yaml", "faulty.yaml"), ("faulty.yaml", "open.yaml")])
def test_status_is_2_where_one_of_them_is_not_understood(two: Write, names: tuple[str, str]) -> None:
    two("faulty.yaml", FAULTY)
    result = run("compare", *names)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith('faulty.yaml:2:19: unknown kind "mian"')
    assert run("compare", "open.yaml", "none.yaml").stderr == "none.yaml: no such file or directory\n"


@pytest.mark.usefixtures("two")
def test_json_sets_the_same_status() -> None:
    result = run("compare", "open.yaml", "trapped.yaml", "--format", "json")
    assert result.exit_code == 1
    assert document(result)["is_worse"] is True
    assert run("compare", "trapped.yaml", "open.yaml", "--format", "json").exit_code == 0


@pytest.mark.usefixtures("two")
def test_one_of_the_files_may_come_by_standard_input() -> None:
    assert run("compare", "open.yaml", "-", given=TRAPPED).exit_code == 1
    assert run("compare", "-", "trapped.yaml", given=OPEN).exit_code == 1
    result = run("compare", "-", "-", given=OPEN)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith("standard input can stand for one ")


@pytest.mark.usefixtures("two")
def test_units_and_rules_can_be_chosen_for_both() -> None:
    text = run("compare", "open.yaml", "trapped.yaml", "--units", "metric", "--rules", "ipc-2021").stdout
    assert "414 kPa" in text
    assert text.count("(ipc-2021)") == 2
    assert run("compare", "open.yaml", "trapped.yaml", "--rules", "nope").exit_code == 2


def test_hostile_title_is_escaped(two: Write) -> None:
    two("hostile.yaml", HOSTILE + TRAPPED)
    for form in ("text", "json"):
        result = run("compare", "open.yaml", "hostile.yaml", "--format", form)
        assert result.exit_code == 1
        assert not any(character in result.output for character in CONTROL)


@pytest.fixture
def reviewed(two: Write, tmp_path: Path) -> Path:
    """A review of the layout that is trapped."""
    two("small.yaml", TRAPPED)
    asked = tmp_path / "old.json"
    asked.write_bytes(written(review(plumbnet.check("trapped.yaml"))))
    return asked


def test_new_error_that_the_file_accepts_sets_the_status(two: Write) -> None:
    accept = "accept: [{finding: trapped-expansion, part: heater, reason: the owner is content}]\n"
    two("accepted.yaml", TRAPPED + accept)
    assert run("check", "accepted.yaml").exit_code == 3
    result = run("compare", "open.yaml", "accepted.yaml")
    assert result.exit_code == 1
    assert "\nFirst to read\n" in result.stdout
    assert document(run("compare", "open.yaml", "accepted.yaml", "--format", "json"))["is_worse"] is True


def test_comments_of_the_last_review_are_told(reviewed: Path) -> None:
    text = run("compare", "trapped.yaml", "open.yaml", "--review", str(reviewed)).stdout
    assert "comments: 1 answered, 2 still open, 0 new." in text
    still = document(run("compare", "trapped.yaml", "trapped.yaml", "--review", str(reviewed), "--format", "json"))
    assert [(one["name"], one["answer"], one["state"]) for one in still["comments"]] == [
        ("trapped-expansion", "broken", "still open"),
        ("relief-above-rating", "cannot-be-told", "still open"),
        ("relief-below-input", "cannot-be-told", "still open"),
    ]
    assert still["review"]["reviewer"] == "A. Plan-Checker"


def test_review_may_come_by_standard_input(reviewed: Path) -> None:
    given = reviewed.read_text()
    result = run("compare", "trapped.yaml", "open.yaml", "--review", "-", given=given)
    assert (result.exit_code, result.stderr) == (0, "")
    result = run("compare", "-", "open.yaml", "--review", "-", given=given)
    assert (result.exit_code, result.stderr) == (2, "standard input can stand for one of the files only\n")


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ("{", "old.json:1:2: this is no JSON: "),
        ('{"schema": 1, "reviews": []}', "old.json:1:15: there is no review in it; "),
        ("[" * 100_000, "old.json: this is nested too deeply"),
    ],
)
def test_status_is_2_where_the_review_is_not_understood(two: Write, given: str, words: str) -> None:
    two("old.json", given)
    result = run("compare", "open.yaml", "trapped.yaml", "--review", "old.json")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(words)
    assert run("compare", "open.yaml", "trapped.yaml", "--review", "none.json").stderr == (
        "none.json: no such file or directory\n"
    )


def test_review_of_another_file_is_not_understood(reviewed: Path) -> None:
    result = run("compare", "open.yaml", "trapped.yaml", "--review", str(reviewed))
    assert (result.exit_code, result.stdout) == (2, "")
    assert "there is no review of open.yaml here, only of " in result.stderr


@pytest.mark.usefixtures("two")
@pytest.mark.parametrize("form", ["html", "pdf"])
def test_page_is_written_in_place_of_what_is_printed(form: str, tmp_path: Path) -> None:
    out = tmp_path / f"changes.{form}"
    result = run("compare", "open.yaml", "trapped.yaml", "-o", str(out))
    assert (result.exit_code, result.output) == (1, "")
    assert out.read_bytes()[:5] == {"html": b"<!DOC", "pdf": b"%PDF-"}[form]


def test_page_of_another_ending_is_refused_before_anything_is_read() -> None:
    result = run("compare", "nowhere.yaml", "nowhere.yaml", "-o", "changes.docx")
    assert (result.exit_code, result.stderr) == (
        2,
        '"changes.docx" does not say how to write it; let its name end in .html or .pdf\n',
    )


def test_renamed_parts_are_told_as_such(two: Write) -> None:
    two("renamed.yaml", TRAPPED.replace(" heater", " boiler"))
    result = run("compare", "trapped.yaml", "renamed.yaml")
    assert (result.exit_code, result.stderr) == (0, "")
    assert "- part renamed: heater -> boiler (storage_heater)\n" in result.stdout
    renamed = document(run("compare", "trapped.yaml", "renamed.yaml", "--format", "json"))["changes"]["renamed"]
    assert renamed == [{"before": "heater", "after": "boiler", "kind": "storage_heater"}]


@pytest.mark.usefixtures("two")
def test_hostile_review_is_escaped(tmp_path: Path) -> None:
    before = plumbnet.check("trapped.yaml")
    asked = requirement("sealed-\x1b[2J", "\u202eevil", number=1, text="\x07")
    old = tmp_path / "old.json"
    old.write_bytes(written(review(before, asked, reviewer="\x1b[2J\u202e", date="\x9b")))
    for more in ((), ("--format", "json")):
        result = run("compare", "trapped.yaml", "open.yaml", "--review", str(old), *more)
        assert result.stderr == ""
        assert not any(character in result.output for character in CONTROL)
    old.write_bytes(written(review(before, asked, file="\x1b[2J.yaml", sha256="0")))
    refused = run("compare", "trapped.yaml", "open.yaml", "--review", str(old))
    assert refused.exit_code == 2
    assert not any(character in refused.output for character in CONTROL)
