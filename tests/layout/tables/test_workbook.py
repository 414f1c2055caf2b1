"""Workbooks are read sheet by sheet, where openpyxl is installed."""

import io
import sys

import pytest
from openpyxl import Workbook

from plumbnet.layout.tables.table_faults import TableError
from plumbnet.layout.tables.workbook import cell_text, workbook_tables


def book() -> bytes:
    made, written = Workbook(), io.BytesIO()
    parts = made.active
    assert parts is not None
    parts.title = "Parts"
    for row in (
        ["name", "kind", "volume", "check"],
        ["heater", "storage_heater", 190.5, None],
        ["m", "meter", None, True],
    ):
        parts.append(row)
    made.create_sheet("Empty")
    made.create_sheet("# notes").append(["whatever", "one", "likes"])
    made.save(written)
    return written.getvalue()


def test_sheets_that_hold_anything_are_tables() -> None:
    (table,) = workbook_tables(book(), "plant.xlsx")
    assert table.name == "plant.xlsx, sheet Parts"
    assert [dict(row.cells) for row in table.rows] == [
        {"name": "heater", "kind": "storage_heater", "volume": "190.5"},
        {"name": "m", "kind": "meter", "check": "true"},
    ]


def test_workbook_that_is_broken_is_one_sentence() -> None:
    for data in (book()[:900], b"PK\x03\x04"):
        with pytest.raises(TableError) as refused:
            list(workbook_tables(data, "plant.xlsx"))
        assert str(refused.value) == "plant.xlsx: this workbook cannot be read; save it anew, or as CSV"


def test_without_its_reader_a_workbook_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    with pytest.raises(TableError) as refused:
        list(workbook_tables(book(), "plant.xlsx"))
    assert str(refused.value) == (
        'plant.xlsx: a workbook needs openpyxl, which is not installed: pip install "plumbnet[xlsx]", or save it as CSV'
    )


def test_cells_are_as_they_would_stand_in_csv() -> None:
    assert [cell_text(value) for value in (0.1 + 0.2, 3.0, "a", False)] == ["0.3", "3", "a", "false"]


def test_number_with_three_decimals_is_never_taken_for_one_with_thousands() -> None:
    assert [cell_text(value) for value in (1.125, -2.25, 1.0625, 1500.0)] == ["1.1250", "-2.25", "1.0625", "1500"]
