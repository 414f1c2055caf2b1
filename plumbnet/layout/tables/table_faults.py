"""Mistakes in tables, each with its table, row and column, to one sentence a line."""

from collections.abc import Iterable
from dataclasses import dataclass

from plumbnet.layout.yaml import MOST_SHOWN, Fault, visible


@dataclass(frozen=True, slots=True)
class TableFault:
    """One mistake: its table, the row as a spreadsheet counts them (0: the whole table), the column ("": the row).

    >>> TableFault("parts.csv", 4, "kind", 'unknown kind "tea"', 'did you mean "tee"?').sentence
    'parts.csv, row 4, column kind: unknown kind "tea": did you mean "tee"?'
    """

    table: str
    row: int
    column: str
    text: str
    hint: str = ""

    @property
    def sentence(self) -> str:
        """Where it stands, what is wrong, what would be right."""
        row = f", row {self.row}" if self.row else ""
        column = f", column {self.column}" if self.column else ""
        return visible(f"{self.table}{row}{column}: {Fault(0, 0, self.text, self.hint).sentence}")


class TableError(Exception):
    """Every mistake of some tables at once; `str()` has a line for each of the first fifty."""

    def __init__(self, faults: Iterable[TableFault]) -> None:
        self.faults = tuple(dict.fromkeys(faults))
        super().__init__(self.faults)

    def __str__(self) -> str:
        left = len(self.faults) - MOST_SHOWN
        return "\n".join(
            [fault.sentence for fault in self.faults[:MOST_SHOWN]] + ([f"and {left} more"] if left > 0 else [])
        )
