"""A workbook (.xlsx) to its tables, a sheet each; openpyxl, which reads it, need not be installed."""

import io
import re
import zipfile
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from typing import Final

from plumbnet.layout.tables.columns import OWN
from plumbnet.layout.tables.table_faults import TableError, TableFault
from plumbnet.layout.tables.table_reading import CellTable, table_of

SIGN: Final = b"PK\x03\x04"
"""How a workbook begins: it is a ZIP archive (from memory)."""
NO_READER: Final = 'a workbook needs openpyxl, which is not installed: pip install "plumbnet[xlsx]", or save it as CSV'
_MOST_BYTES = 256 << 20  # of what is packed in a workbook, which a small file could else blow up


def workbook_tables(data: bytes, name: str) -> Iterator[CellTable]:
    """The tables of a workbook: its sheets, less the empty ones and those called "# ...". Raises TableError."""
    try:
        openpyxl = import_module("openpyxl")
    except ImportError as error:
        raise TableError([TableFault(name, 0, "", NO_READER)]) from error
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            size = sum(each.file_size for each in packed.infolist())
        if size > _MOST_BYTES:
            raise TableError([TableFault(name, 0, "", "this workbook is too large", "save its tables as CSV")])
        book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=True)
        sheets = [(sheet.title, [list(map(cell_text, row)) for row in sheet.values]) for sheet in book.worksheets]
    except (zipfile.BadZipFile, KeyError, ValueError, SyntaxError) as error:
        raise TableError(
            [TableFault(name, 0, "", "this workbook cannot be read", "save it anew, or as CSV")]
        ) from error
    for title, rows in sheets:
        if not title.startswith(OWN) and any(any(row) for row in rows):
            yield table_of(f"{Path(name).name}, sheet {title}", iter(rows), "unsure")


def cell_text(value: object) -> str:
    """What a cell of a workbook holds, as it would stand in CSV.

    A number has no three decimals, which text with them could have for thousands.

    >>> cell_text(None), cell_text(True), cell_text(190.0), cell_text(4.5), cell_text(1.125), cell_text("tee")
    ('', 'true', '190', '4.5', '1.1250', 'tee')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, float):
        text = f"{value:.15g}"
        return f"{text}0" if re.fullmatch(r"-?[0-9]+\.[0-9]{3}", text) else text
    return str(value)
