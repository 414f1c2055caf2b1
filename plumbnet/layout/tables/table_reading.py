"""The bytes of a table that a spreadsheet saved to rows of cells, whatever its encoding and delimiter."""

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from plumbnet.layout.tables.cell_values import Decimals, plain_cell
from plumbnet.layout.tables.table_faults import TableError, TableFault
from plumbnet.layout.yaml import nearest_known, quoted

_MARKS: Final = {b"\xef\xbb\xbf": "utf-8-sig", b"\xff\xfe": "utf-16", b"\xfe\xff": "utf-16"}
"""How a text begins that says its encoding: byte order marks (The Unicode Standard, section 23.8; from memory)."""
_OLD_WORKBOOK = b"\xd0\xcf\x11\xe0"  # a compound file, which .xls is (from memory)
_DELIMITERS: Final = (",", ";", "\t")
MOST_ROWS = 250_000
"""Most rows of a table: as many as a layout may have pipes."""


@dataclass(frozen=True, slots=True)
class TableRow:
    """A row: its number as a spreadsheet counts (the head is 1), and its cells by column, less the empty ones."""

    number: int
    cells: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class CellTable:
    """A table: what messages call it, its columns in their order, its rows, how its numbers are written."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[TableRow, ...]
    decimals: Decimals = "point"

    def fault(self, row: int, column: str, text: str, hint: str = "") -> TableFault:
        """A mistake in this table."""
        return TableFault(self.name, row, column, text, hint)


def read_table(data: bytes, name: str) -> CellTable:
    r"""The table of a CSV file, delimited by commas, semicolons (then with decimal commas) or tabs. Raises TableError.

    >>> read_table(b"\xef\xbb\xbfname;kind\nsplit;tee\n", "parts.csv").rows
    (TableRow(number=2, cells={'name': 'split', 'kind': 'tee'}),)
    """
    text = _decoded(data, name)
    first, _, rest = text.partition("\n")
    if first.strip().lower().startswith("sep=") and len(first.strip()) == len("sep=;"):
        delimiter, text = first.strip()[-1], rest
    else:
        delimiter = max(_DELIMITERS, key=_outside_quotes(first).count)
    decimals: Decimals = "comma" if delimiter == ";" else "unsure" if delimiter == "\t" else "point"
    try:
        return table_of(name, csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True), decimals)
    except csv.Error as error:
        raise TableError([TableFault(name, 0, "", f"this is no table in CSV: {error}")]) from error


def table_of(name: str, lines: Iterator[list[str]], decimals: Decimals) -> CellTable:
    """The table of lines of cells, of which the first names the columns. Raises TableError."""
    head = [plain_cell(cell) for cell in next(lines, [])]
    while head and not head[-1]:
        head.pop()
    faults = list(_in_head(name, head))
    rows = []
    for number, cells in enumerate(lines, start=2):
        if number > MOST_ROWS:
            faults.append(TableFault(name, number, "", f"a table has at most {MOST_ROWS:,} rows", "split the layout"))
            break
        said = [plain_cell(cell) for cell in cells]
        if any(said[len(head) :]):
            text = f"this row has more cells than the table has columns, which is {len(head)}"
            faults.append(TableFault(name, number, "", text, "put text that holds the delimiter in quotes"))
        found = {column: cell for column, cell in zip(head, said, strict=False) if column and cell}
        if found:
            rows.append(TableRow(number, found))
    if faults:
        raise TableError(faults)
    return CellTable(name, tuple(filter(None, head)), tuple(rows), decimals)


def _in_head(name: str, head: list[str]) -> Iterator[TableFault]:
    if not head:
        yield TableFault(name, 0, "", "this table is empty", "its first row names the columns")
    for at, column in enumerate(head):
        if column and column in head[:at]:
            yield TableFault(name, 1, column, "two columns have this name", "keep one of them")


def _outside_quotes(text: str) -> str:
    return "".join(text.split('"')[::2])


def _decoded(data: bytes, name: str) -> str:
    """The text of a table: as its byte order mark says, else UTF-8, else Windows-1252. Raises TableError."""
    if data.startswith(_OLD_WORKBOOK):
        raise TableError([TableFault(name, 0, "", "this is a workbook of the old form", "save it as .xlsx or as CSV")])
    encoding = next((own for mark, own in _MARKS.items() if data.startswith(mark)), None)
    if encoding is None and b"\0" in data:
        encoding = "utf-16-le" if data[1:2] == b"\0" else "utf-16-be"
    for each in (encoding,) if encoding else ("utf-8", "cp1252"):
        try:
            text = data.decode(each)
        except UnicodeError:
            continue
        if "\0" not in text:
            return text
    raise TableError([TableFault(name, 0, "", "its encoding is not one that is read", "save it as CSV UTF-8")])


def of_columns(table: CellTable, wanted: tuple[str, ...]) -> Iterator[TableFault]:
    """The columns that a table lacks, each with the one of it that may be meant."""
    for column in wanted:
        if column not in table.columns:
            near = nearest_known(column, table.columns)
            hint = f"is it the one called {quoted(near)}?" if near else f"there is {', '.join(table.columns)}"
            yield table.fault(1, "", f"the column {column} is missing", hint)
