"""Layouts from tables and back, for programs."""

from pathlib import Path

from plumbnet.api import Layout, read, read_bytes
from plumbnet.layout.model import System
from plumbnet.layout.tables import layout_of, tables_in, tables_of
from plumbnet.layout.units import Units
from plumbnet.report.output import write_whole


def import_tables(*paths: str | Path, units: Units | None = None) -> System:
    """The layout that tables of a spreadsheet describe: of parts, of pipes, and perhaps of the layout itself.

    They are CSV, or sheets of a workbook (.xlsx). `units` is what a bare number means where no table says it. Raises
    TableError with every mistake, its table, row and column; OSError for a file that cannot be read.

    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     export_tables("systems/open-house.yaml", folder)
    ...     house = import_tables(*(Path(folder) / f"{name}.csv" for name in ("parts", "pipes", "layout")))
    ['parts.csv', 'pipes.csv', 'layout.csv', 'tanks.csv']
    >>> house.title, len(house.parts)
    ('12 Alder Street, Lantern Falls', 19)
    """
    made = layout_of([table for path in paths for table in tables_in(path)], units=units)
    return read_bytes(made.text.encode(), file=", ".join(Path(path).name for path in paths))


def export_tables(layout: Layout, folder: str | Path, *, semicolons: bool = False) -> list[str]:
    """Write the tables of a layout into a folder that is there, and return the names of the files.

    With `semicolons` they are what a spreadsheet with a decimal comma opens. Files of these names are written over.
    Raises OSError where one cannot be written, and LayoutError for a layout that cannot be read.
    """
    system = layout if isinstance(layout, System) else read_bytes(layout) if isinstance(layout, bytes) else read(layout)
    tables = tables_of(system, semicolons=semicolons)
    for name, content in tables.items():
        write_whole(Path(folder) / name, content)
    return list(tables)
