"""The command `report`."""

from pathlib import Path

import yaml
from running import HOSTILE, OPEN, TRAPPED, Write, run

SUPPOSED = yaml.safe_dump(yaml.safe_load(TRAPPED) | {"scenarios": {"unchecked": {"change": [{"remove": "cv"}]}}})


def test_report_is_written_in_the_form_its_name_says(write: Write) -> None:
    write("house.yaml", TRAPPED)
    for form, start in (("html", b"<!DOCTYPE html>"), ("pdf", b"%PDF-")):
        result = run("report", "house.yaml", "-o", f"out.{form}")
        assert (result.output, result.exit_code) == ("", 1)
        assert Path(f"out.{form}").read_bytes().startswith(start)


def test_open_house_ends_with_status_0_and_has_its_date(write: Write) -> None:
    write("house.yaml", OPEN)
    assert run("report", "house.yaml", "-o", "out.html", "--date", "3 May 2031").exit_code == 0
    assert "Date: 3 May 2031" in Path("out.html").read_text(encoding="utf-8")


def test_report_on_a_scenario_is_that_of_the_changed_layout(write: Write) -> None:
    write("house.yaml", SUPPOSED)
    assert run("report", "house.yaml", "-o", "out.html", "--scenario", "unchecked").exit_code == 0
    assert "Scenario: unchecked" in Path("out.html").read_text(encoding="utf-8")


def test_unknown_scenario_is_refused_in_a_sentence(write: Write) -> None:
    write("house.yaml", SUPPOSED)
    result = run("report", "house.yaml", "-o", "out.html", "--scenario", "uncheckd")
    assert result.output.startswith("no scenario is called ")
    assert result.output.endswith('"uncheckd": did you mean "unchecked"?\n')
    assert result.exit_code == 2


def test_other_endings_are_refused_before_anything_is_read() -> None:
    result = run("report", "nowhere.yaml", "-o", "out.docx")
    assert result.output.startswith('"out.docx" ')
    assert result.output.endswith(" .html or .pdf\n")


def test_nothing_of_a_hostile_title_is_markup(write: Write) -> None:
    write("house.yaml", HOSTILE + TRAPPED)
    run("report", "house.yaml", "-o", "out.html")
    assert "\x1b" not in Path("out.html").read_text(encoding="utf-8")
