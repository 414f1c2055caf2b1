"""A file that a spreadsheet saved to its tables: one of CSV, several of a workbook."""

from collections.abc import Iterator
from pathlib import Path

from plumbnet.layout.tables.table_faults import TableError, TableFault
from plumbnet.layout.tables.table_reading import CellTable, read_table
from plumbnet.layout.tables.workbook import SIGN, workbook_tables
from plumbnet.layout.yaml import MAX_BYTES, bytes_of


def tables_in(path: str | Path) -> Iterator[CellTable]:
    """The tables of a file, called by its name in messages. Raises TableError, OSError."""
    data, name = bytes_of(path), Path(path).name
    if len(data) > MAX_BYTES:
        raise TableError([TableFault(name, 0, "", "this file is too large for a table", "split the layout")])
    if data.startswith(SIGN):
        yield from workbook_tables(data, name)
    else:
        yield read_table(data, name)
