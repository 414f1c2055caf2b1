"""The lines of a layout's file as they are made out of tables, each with the cells that it was made of."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from plumbnet.layout.rewriting import inline_yaml
from plumbnet.layout.tables.table_faults import TableFault
from plumbnet.layout.tables.table_reading import CellTable
from plumbnet.layout.yaml import Fault, LayoutError

_LINE = re.compile(r"\bline (\d+)")


@dataclass(frozen=True, slots=True)
class Cell:
    """A value of a table: the column that it stands in, and what it says."""

    column: str
    value: object


@dataclass(slots=True)
class _Line:
    """A line, the row it was made of, and where in it the words of each column begin and end."""

    table: CellTable | None
    row: int
    text: str = ""
    spans: list[tuple[int, int, str]] = field(default_factory=list)

    def put(self, words: str, column: str = "") -> None:
        if column:
            self.spans.append((len(self.text) + 1, len(self.text) + len(words) + 1, column))
        self.text += words


@dataclass(slots=True)
class LayoutLines:
    """The lines of a layout's file so far."""

    lines: list[_Line] = field(default_factory=list)

    def heading(self, words: str) -> None:
        """A line that was made of no row."""
        self.lines.append(_Line(None, 0, words))

    def value(self, table: CellTable, row: int, key: str, cell: Cell) -> None:
        """A key with what one cell says."""
        line = self._line(table, row)
        line.put(f"{key}: {inline_yaml(cell.value)}", cell.column)

    def part(self, table: CellTable, row: int, name: str, fields: Mapping[str, Cell | Mapping[str, Cell]]) -> None:
        """A part with its fields, in one line; with its kind alone where it has no others."""
        line = self._line(table, row)
        line.put(f"  {inline_yaml(name)}: {{")
        for number, (key, cell) in enumerate(fields.items()):
            line.put(", " if number else "")
            if isinstance(cell, Cell):
                line.put(f"{key}: {inline_yaml(cell.value)}", cell.column)
            else:
                line.put(f"{key}: {{")
                for at, (inner, own) in enumerate(cell.items()):
                    line.put(", " if at else "")
                    line.put(f"{inner}: {inline_yaml(own.value)}", own.column)
                line.put("}")
        line.put("}")

    def run(self, table: CellTable, row: int, ends: Sequence[Cell], fields: Mapping[str, Cell]) -> None:
        """A run of one pipe, with what is known of the pipe."""
        line = self._line(table, row)
        start, end = ends
        line.put("  - {path: " if fields else "  - ")
        line.put(str(start.value), start.column)
        line.put(" -> ")
        line.put(str(end.value), end.column)
        for key, cell in fields.items():
            line.put(", ")
            line.put(f"{key}: {inline_yaml(cell.value)}", cell.column)
        line.put("}" if fields else "")

    def text(self) -> str:
        """The file."""
        return "\n".join(line.text for line in self.lines) + "\n"

    def faults(self, error: LayoutError) -> list[TableFault]:
        """The mistakes of the file, each at the cell or the row that it comes from."""
        return [self._fault(fault) for fault in error.faults]

    def _line(self, table: CellTable, row: int) -> _Line:
        line = _Line(table, row)
        self.lines.append(line)
        return line

    def _fault(self, fault: Fault) -> TableFault:
        text = _LINE.sub(lambda found: self._place(int(found[1])), fault.text)
        line = self.lines[fault.line - 1] if 0 < fault.line <= len(self.lines) else _Line(None, 0)
        if line.table is None:
            return TableFault("the tables", 0, "", text, fault.hint)
        column = next((name for start, end, name in line.spans if start <= fault.column < end), "")
        return line.table.fault(line.row, column, text, fault.hint)

    def _place(self, number: int) -> str:
        line = self.lines[number - 1]
        return f"row {line.row} of {line.table.name}" if line.table else f"line {number}"
