"""The heaters of a report as a table of pandas, which need not be installed."""

from importlib import import_module
from typing import TYPE_CHECKING, Final

from plumbnet.analysis import Report
from plumbnet.report.formats import HEATER_COLUMNS, heater_cells

if TYPE_CHECKING:
    from pandas import DataFrame

FRAME_COLUMNS: Final = ("file", "line", "name", "kind", "verdict", *HEATER_COLUMNS)
"""The columns, whatever the heaters; SI, pressures gauge at the heater's own height."""
UNITS: Final = ("_pa", "_k", "_m3")
"""How columns end that hold a quantity."""
MISSING = 'a table needs pandas, which is not installed: pip install "plumbnet[frames]"'


def heaters_frame(report: Report) -> "DataFrame":
    """A row to each heater, in the order of the file. Raises ImportError where pandas is not installed."""
    try:
        pandas = import_module("pandas")
    except ImportError as error:
        raise ImportError(MISSING) from error
    file = report.system.record.file
    rows = [{"file": file, **heater_cells(heater)} for heater in report.heaters]
    frame = pandas.DataFrame(rows, columns=list(FRAME_COLUMNS))
    return frame.astype({column: float for column in FRAME_COLUMNS if column.endswith(UNITS)})
