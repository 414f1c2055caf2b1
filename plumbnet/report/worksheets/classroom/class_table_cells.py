"""The results of a class by belief as a table for spreadsheets; its columns are a promise."""

import csv
import io
from collections.abc import Iterator, Sequence
from typing import Final

from plumbnet.report.formats import CsvCell, cell
from plumbnet.study.training import BeliefRow

CLASS_COLUMNS: Final = (
    "name",
    "is_belief",
    "holds",
    "apprentice",
    "could",
    "held",
    "put_right",
    "last_day",
    "holds_last",
)
"""Names of the columns: counts of questions, days as 2026-03-14, 1 for yes; more may come behind them."""


def class_csv(rows: Sequence[BeliefRow]) -> str:
    """A row to each belief and apprentice who could hold it; lines end as RFC 4180 says."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(CLASS_COLUMNS)
    table.writerows([cell(value) for value in line] for row in rows for line in _lines(row))
    return out.getvalue()


def _lines(row: BeliefRow) -> Iterator[tuple[CsvCell, ...]]:
    for one in row.holdings:
        yield (
            row.name,
            int(row.is_belief),
            row.holds,
            one.apprentice,
            one.could,
            one.held,
            one.put_right,
            one.last_day,
            int(one.holds_last),
        )
