"""The command `review`."""

import json
from pathlib import Path

from running import OPEN, TRAPPED, Write, run


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
