"""A file is a table or a workbook by what it begins with, whatever its name."""

from pathlib import Path

import pytest

from plumbnet.layout.tables.table_faults import TableError
from plumbnet.layout.tables.table_files import tables_in


def test_file_is_read_by_its_content(tmp_path: Path) -> None:
    (tmp_path / "parts.xlsx").write_bytes(b"name;kind\nsplit;tee\n")
    (table,) = tables_in(tmp_path / "parts.xlsx")
    assert (table.name, len(table.rows)) == ("parts.xlsx", 1)
    (tmp_path / "book.csv").write_bytes(b"PK\x03\x04")
    with pytest.raises(TableError, match=r"^book\.csv: this workbook cannot be read"):
        list(tables_in(tmp_path / "book.csv"))


def test_file_without_end_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("plumbnet.layout.tables.table_files.MAX_BYTES", 5)
    (tmp_path / "parts.csv").write_bytes(b"name,kind\n")
    with pytest.raises(TableError) as refused:
        list(tables_in(tmp_path / "parts.csv"))
    assert str(refused.value) == "parts.csv: this file is too large for a table; split the layout"
