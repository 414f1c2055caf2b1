"""Layouts from tables of a spreadsheet, and back: parts, pipes, and what is said of the layout as a whole.

A table's bytes become rows (`table_reading`, `workbook`), rows the lines of a layout's file (`table_import`), which the
reader of that file reads; what it finds wrong there is told of the cell that it came from (`layout_lines`).
"""

from plumbnet.layout.tables.table_export import left_out_of_tables, tables_of, template_tables
from plumbnet.layout.tables.table_faults import TableError, TableFault
from plumbnet.layout.tables.table_files import tables_in
from plumbnet.layout.tables.table_import import Imported, layout_of

__all__ = [
    "Imported",
    "TableError",
    "TableFault",
    "layout_of",
    "left_out_of_tables",
    "tables_in",
    "tables_of",
    "template_tables",
]
