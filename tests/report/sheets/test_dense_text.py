"""A document in dense text: chapters apart, steps in a line or two, a page for a house."""

from pathlib import Path

import pytest

import plumbnet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.report.prose.printed_precision import Written, WrittenStep
from plumbnet.report.prose.prose_blocks import Heading, Lines, Paragraph, Points, Steps, Table
from plumbnet.report.sheets.dense_text import SYMBOL, dense_text
from plumbnet.report.sheets.sheet_report import sheets_text

SYSTEMS = Path(__file__).parents[3] / "systems"
PAGE_LINES = 80
"""Lines of a hundred columns in letters of 9 pt that stand on a page of Letter within margins of 10 mm."""


def step(source: str, name: str = "sum") -> WrittenStep:
    numbers = (Written("a", "1", "gal"), Written("b", "2", "gal"))
    return WrittenStep("V", name, "a + b", numbers, Written("V", "3", "gal"), source)


def test_chapters_stand_apart_and_nothing_else() -> None:
    head = (Heading("Tank", 1), Paragraph("Mill", "Building"))
    assert (
        dense_text([*head, Heading("Result"), Heading("Charge", 3), Lines(("x  y",))])
        == "Tank\n====\nBuilding: Mill\n\nRESULT\nCharge:\nx  y\n"
    )


def test_points_run_on_and_tables_have_no_head() -> None:
    table = Table(("what", "value"), (("tank", "5 gal"),))
    assert dense_text([Points(("One.", "Two.")), table]) == "One. Two.\ntank  5 gal\n"


def test_number_that_goes_in_is_a_line() -> None:
    items = Table((SYMBOL, "what", "value", "from"), (("V", "water", "40 gal", "line 5"),))
    assert dense_text([items]) == "V = 40 gal, water (line 5)\n"


def test_step_has_its_formula_numbers_result_and_source() -> None:
    assert dense_text([Steps((step("by definition"),), 7)]) == (
        " 7. sum [by definition]: V = a + b, with a = 1 gal, b = 2 gal: 3 gal\n"
    )


def test_long_source_is_written_out_once() -> None:
    lines = dense_text([Steps((step("a table that has a long name"), step("a table that has a long name")), 3)])
    assert lines.splitlines()[1] == " 4. sum [as step 3]: V = a + b, with a = 1 gal, b = 2 gal: 3 gal"


def test_line_does_not_end_within_a_number_or_a_formula() -> None:
    text = dense_text([Steps((step("by definition", name="word " * 14),), 1)])
    assert all(piece in text.replace("\n    ", "\n") for piece in ("V = a + b", "a = 1 gal", "b = 2 gal", "3 gal"))
    assert len(text.splitlines()) > 1


def test_what_would_steer_a_terminal_is_seen() -> None:
    assert dense_text([Paragraph("a\x1b[2Jb\x1fc")]) == "a\\x1b[2Jb c\n"


@pytest.mark.parametrize("name", ["house-with-check", "open-house", "row-house-bypass-under-ipc"])
def test_sheet_of_a_house_stands_on_one_page(name: str) -> None:
    made = plumbnet.check(plumbnet.read(SYSTEMS / f"{name}.yaml"))
    for one in sheets(made, list(made.heaters)):
        assert len(sheets_text([one], "us").splitlines()) <= PAGE_LINES


def test_table_of_many_columns_keeps_its_head() -> None:
    head = ("number", "in the file", "from", "below", "up to")
    assert dense_text([Table(head, (("street", "62 psi", "6 psi", "dry", "81 psi"),))]).startswith(
        "number  in the file  "
    )
    assert dense_text([Table(("what", "value"), (("tank", "5 gal"),))]) == "tank  5 gal\n"
