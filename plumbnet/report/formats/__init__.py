"""Reports for programs: JSON, SARIF, JUnit and CSV, a module each."""

from plumbnet.report.formats.acceptance_fields import accepted_fields
from plumbnet.report.formats.csv1 import (
    BETWEEN,
    HEATER_COLUMNS,
    CsvCell,
    CsvRow,
    CsvWriter,
    cell,
    fault_cells,
    finding_cells,
    heater_cells,
)
from plumbnet.report.formats.json1 import JsonWriter, error_rows, in_order, note_rows, report_fields
from plumbnet.report.formats.junit import JunitWriter
from plumbnet.report.formats.part_lists import Json
from plumbnet.report.formats.sarif import SarifWriter

__all__ = [
    "BETWEEN",
    "HEATER_COLUMNS",
    "CsvCell",
    "CsvRow",
    "CsvWriter",
    "Json",
    "JsonWriter",
    "JunitWriter",
    "SarifWriter",
    "accepted_fields",
    "cell",
    "error_rows",
    "fault_cells",
    "finding_cells",
    "heater_cells",
    "in_order",
    "note_rows",
    "report_fields",
]
