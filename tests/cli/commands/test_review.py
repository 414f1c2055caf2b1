"""The command `review`."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from running import OPEN, TRAPPED, Write, run

from plumbnet.report import review as writers
from plumbnet.report.review.reviewed_files import ReviewedFiles


def test_sheet_of_a_trapped_house_is_printed_with_status_1(write: Write) -> None:
    write("house.yaml", TRAPPED)
    result = run("review", "house.yaml", "--reviewer", "R. Hale", "--date", "30 November 2026")
    assert result.exit_code == 1
    assert "Reviewed by: R. Hale" in result.output
    assert "1. error: trapped-expansion: heater and " in result.output


def test_house_with_no_error_ends_with_status_0(write: Write) -> None:
    write("house.yaml", OPEN)
    assert run("review", "house.yaml").exit_code == 0


def test_several_files_come_under_one_cover_and_one_that_is_not_understood_is_named(write: Write) -> None:
    write("a.yaml", OPEN)
    write("b.yaml", TRAPPED)
    write("c.yaml", "plumbnet: 1\nparts: {}\n")
    result = run("review", "a.yaml", "b.yaml", "c.yaml", "--format", "json")
    assert result.exit_code == 2
    document = json.loads(result.stdout)
    assert [one["file"] for one in document["reviews"]] == ["a.yaml", "b.yaml"]
    assert {one["file"] for one in document["errors"]} == {"c.yaml"}
    assert "c.yaml:" in result.stderr


def test_sheet_is_written_in_the_form_its_name_says(write: Write) -> None:
    write("house.yaml", TRAPPED)
    for form, start in (("html", b"<!DOCTYPE html>"), ("pdf", b"%PDF-")):
        result = run("review", "house.yaml", "-o", f"out.{form}")
        assert (result.output, result.exit_code) == ("", 1)
        assert Path(f"out.{form}").read_bytes().startswith(start)


def test_folder_without_a_layout_is_refused(write: Write) -> None:
    Path("notes").mkdir()
    Path(write("notes.yaml", "remarks: none\n")).replace(Path("notes") / "notes.yaml")
    result = run("review", "notes")
    assert result.exit_code == 2
    assert result.output.startswith("none of the files found")


@pytest.mark.parametrize("form", [(), ("--format", "csv"), ("-o", "out.html")])
def test_review_that_cannot_be_written_leaves_the_others_theirs(
    form: tuple[str, ...], write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("review_printed", "review_file"):
        monkeypatch.setattr(writers, name, failing_on_bad(getattr(writers, name)))
    write("a.yaml", f"title: bad\n{OPEN}")
    write("b.yaml", TRAPPED)
    result = run("review", "a.yaml", "b.yaml", *form)
    assert result.exit_code == 2
    assert result.stderr.startswith("a.yaml: the program failed on this file")
    written = Path("out.html").read_text(encoding="utf-8") if "-o" in form else result.stdout
    assert "b.yaml" in written


def failing_on_bad(write_all: Callable[..., object]) -> Callable[..., object]:
    def failing(files: ReviewedFiles, *given: object) -> object:
        if any(review.report.system.title == "bad" for review in files.reviews):
            raise ZeroDivisionError
        return write_all(files, *given)

    return failing
