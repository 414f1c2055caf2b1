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
    assert dense_text([Steps((step("by definition"),), 7)]) == (" 7. sum [by definition]: V = a + b = 1 + 2 = 3 gal\n")


def test_table_is_entered_with_units_and_what_is_only_handed_on_stands_once() -> None:
    warm = Written("T", "333.15", "K", "140 degF")
    looked_up = WrittenStep("v", "volume", "v(T, p)", (warm, Written("p", "60", "psi abs")), Written("v", "2", ""), "R")
    handed_on = WrittenStep("p_0", "charge", "p", (Written("p", "60", "psi"),), Written("p_0", "60", "psi"), "usual")
    assert dense_text([Steps((looked_up, handed_on), 1)]) == (
        " 1. volume [R]: v = v(T, p) = v(333.15 K (140 degF), 60 psi abs) = 2\n 2. charge [usual]: p_0 = p = 60 psi\n"
    )


def test_symbol_within_another_is_left_alone() -> None:
    numbers = (Written("V", "5", "gal"), Written("V_e", "2", "gal"))
    one = WrittenStep("V_t", "rest", "max(0, V - V_e)", numbers, Written("V_t", "3", "gal"), "sum")
    assert dense_text([Steps((one,), 1)]) == " 1. rest [sum]: V_t = max(0, V - V_e) = max(0, 5 - 2) = 3 gal\n"


def test_long_origin_of_numbers_is_told_once() -> None:
    rows = (("a", "first", "1 gal", "found by trying many"), ("b", "next", "2 gal", "found by trying many of them"))
    told = dense_text([Table((SYMBOL, "what", "value", "from"), (*rows, ("c", *rows[1][1:])))])
    assert told.splitlines()[1:] == ["b = 2 gal, next (found by trying many of them)", "c = 2 gal, next (as b)"]


def test_column_in_which_nothing_stands_is_left_out() -> None:
    table = Table(("number", "from", "below", "to", "above"), (("set", "6 psi", "dry", "any", ""),))
    assert dense_text([table]) == "number  from   below  to\nset     6 psi  dry    any\n"


def test_long_source_is_written_out_once() -> None:
    lines = dense_text([Steps((step("a table that has a long name"), step("a table that has a long name")), 3)])
    assert lines.splitlines()[1] == " 4. sum [as step 3]: V = a + b = 1 + 2 = 3 gal"


def test_line_does_not_end_within_a_number_or_a_formula() -> None:
    text = dense_text([Steps((step("by definition", name="word " * 14),), 1)])
    assert all(piece in text for piece in ("V =", "a + b", "1 + 2", "3 gal"))
    assert len(text.splitlines()) > 1


def test_what_would_steer_a_terminal_is_seen() -> None:
    assert dense_text([Paragraph("a\x1b[2Jb\x1fc")]) == "a\\x1b[2Jb c\n"


@pytest.mark.parametrize("name", ["house-with-check", "open-house", "row-house-bypass-under-ipc", "dual-check-meter"])
def test_sheet_of_a_house_stands_on_one_page(name: str) -> None:
    made = plumbnet.check(plumbnet.read(SYSTEMS / f"{name}.yaml"))
    for one in sheets(made, list(made.heaters)):
        assert len(sheets_text([one], "us").splitlines()) <= PAGE_LINES


def test_sheet_of_a_house_with_a_tank_in_trouble_stands_on_one_page_of_smaller_letters() -> None:
    made = plumbnet.check(plumbnet.read(SYSTEMS / "bakery-tank-too-small.yaml"))
    (one,) = sheets(made, list(made.heaters))
    assert len(sheets_text([one], "us").splitlines()) <= PAGE_LINES * 9 // 8


def test_table_of_many_columns_keeps_its_head() -> None:
    head = ("number", "in the file", "from", "below", "up to")
    assert dense_text([Table(head, (("street", "62 psi", "6 psi", "dry", "81 psi"),))]).startswith(
        "number  in the file  "
    )
    assert dense_text([Table(("what", "value"), (("tank", "5 gal"),))]) == "tank  5 gal\n"
