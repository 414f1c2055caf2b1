"""Tables of parts, pipes and the layout itself to the text of a layout's file, or to every mistake in them at once."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial

from plumbnet.layout.edits import unknown_kind
from plumbnet.layout.file import read_system
from plumbnet.layout.model import KINDS, NAME, NAME_ADVICE
from plumbnet.layout.rewriting import inline_yaml
from plumbnet.layout.tables.cell_values import CellError, is_bare_number, value_of, with_point
from plumbnet.layout.tables.columns import (
    CONTENTS,
    LAYOUT,
    OWN,
    PARTS,
    PIPE_FIELDS,
    PIPES,
    TANKS,
    field_and_unit,
    is_quantity_column,
    is_text_column,
    part_columns,
)
from plumbnet.layout.tables.layout_lines import Cell, LayoutLines
from plumbnet.layout.tables.table_faults import TableError, TableFault
from plumbnet.layout.tables.table_reading import CellTable, TableRow, of_columns
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import LayoutError, nearest, quoted

_WITHIN = "."


@dataclass(frozen=True, slots=True)
class Imported:
    """What tables came to: the text of a layout's file, and in a sentence each what of them was passed over."""

    text: str
    left_out: tuple[str, ...]


def layout_of(tables: Iterable[CellTable], *, units: Units | None = None) -> Imported:
    """The layout that tables describe; `units` is what a bare number means where no table says it.

    Raises TableError with every mistake that was found.
    """
    sorted_out = _SortedOut()
    for table in tables:
        sorted_out.take(table)
    maker = _Maker(sorted_out, units)
    lines = maker.lines()
    if not maker.faults:
        try:
            read_system(lines.text().encode(), file="")
        except LayoutError as error:
            maker.faults += lines.faults(error)
    if maker.faults:
        raise TableError(maker.faults)
    return Imported(lines.text(), tuple(sorted_out.left_out))


@dataclass(slots=True)
class _SortedOut:
    """Tables by what they hold, which their columns tell."""

    parts: list[CellTable] = field(default_factory=list)
    pipes: list[CellTable] = field(default_factory=list)
    layout: list[CellTable] = field(default_factory=list)
    left_out: list[str] = field(default_factory=list)

    def take(self, table: CellTable) -> None:
        """Put a table with its like. Raises TableError for one without a column that it needs."""
        columns = set(table.columns)
        if columns.issuperset(TANKS[:2]):
            self.left_out.append(f"{table.name} is a schedule made of the parts, and is not read.")
            return
        for wanted, own, signs in (
            (LAYOUT, self.layout, set(LAYOUT)),
            (PIPES, self.pipes, {*PIPES, "pipe"}),
            (PARTS, self.parts, {*PARTS}),
        ):
            if columns & signs:
                if missing := list(of_columns(table, wanted)):
                    raise TableError(missing)
                own.append(table)
                return
        raise TableError([table.fault(1, "", f"nothing is known of a table of {', '.join(table.columns)}", _SORTS)])


@dataclass(slots=True)
class _Maker:
    """Makes the lines of a file out of tables, collecting mistakes."""

    tables: _SortedOut
    units: Units | None
    faults: list[TableFault] = field(default_factory=list)
    names: dict[str, str] = field(default_factory=dict)
    says_units: bool = False

    def lines(self) -> LayoutLines:
        """The file, as far as it can be made."""
        made = LayoutLines()
        made.heading("plumbnet: 1")
        for kind, tables in (("parts", self.tables.parts), ("pipes", self.tables.pipes)):
            if not tables:
                self.faults.append(
                    TableFault("the tables", 0, "", f"there is none of {kind}, which has the columns {_NEEDED[kind]}")
                )
        keys = [(table, row) for table in self.tables.layout for row in table.rows]
        is_told = any(row.cells.get("key") == "units" for _, row in keys)
        self.says_units = self.units is not None or is_told
        if not keys and self.units is None and any(one.decimals == "comma" for one in self.tables.parts):
            made.heading("units: metric")  # what it is told in; each quantity has its own unit
        elif self.units is not None and not is_told:
            made.heading(f"units: {self.units}")
        self._layout(made, keys)
        made.heading("parts:")
        for table in self.tables.parts:
            self._each(table, self._part, made, _part_fault)
        made.heading("runs:")
        for table in self.tables.pipes:
            self._each(table, self._pipe, made, _pipe_fault)
        return made

    def _layout(self, made: LayoutLines, keys: Sequence[tuple[CellTable, TableRow]]) -> None:
        """What is said of the layout as a whole; keys such as job.number one under the other."""
        groups: dict[str, list[tuple[CellTable, TableRow, str]]] = {}
        for table, row in keys:
            key = row.cells.get("key", "")
            head, _, rest = key.partition(_WITHIN)
            if any(rest == other for _, _, other in groups.get(head, ())):
                self.faults.append(table.fault(row.number, "key", f"{quoted(key)} stands here twice", "keep one"))
            elif key and row.cells.get("value"):
                groups.setdefault(head, []).append((table, row, rest))
        for head, rows in groups.items():
            if rows[0][2]:
                made.heading(f"{head}:")
            for table, row, rest in rows:
                value = self._read(table, row, "value", lambda text: value_of(text, is_text=text[:1] not in {"[", "{"}))
                made.value(
                    table, row.number, f"  {inline_yaml(rest)}" if rest else inline_yaml(head), Cell("value", value)
                )

    def _each(self, table: CellTable, make: "_Make", made: LayoutLines, of_column: "_OfColumn") -> None:
        for column in table.columns:
            fault = of_column(column)
            if fault and not column.startswith(OWN):
                self.faults.append(table.fault(1, column, *fault))
        for row in table.rows:
            if any(not column.startswith(OWN) for column in row.cells):
                make(table, row, made)

    def _part(self, table: CellTable, row: TableRow, made: LayoutLines) -> None:
        name = row.cells.get("name")
        if name is None:
            self.faults.append(table.fault(row.number, "name", "this row has no name", "give each part one of its own"))
            return
        if not NAME.fullmatch(name):
            advice = _NO_ASSEMBLIES if _OF_INSTANCE in name else NAME_ADVICE
            self.faults.append(table.fault(row.number, "name", f"{quoted(name)} is no name for a part", advice))
            return
        if name in self.names:
            where = self.names[name]
            self.faults.append(table.fault(row.number, "name", f"{quoted(name)} is already the name of {where}"))
            return
        self.names[name] = f"row {row.number}" + ("" if len(self.tables.parts) == 1 else f" of {table.name}")
        if "kind" not in row.cells:
            self.faults.append(table.fault(row.number, "kind", f"{name} has no kind", "for example valve"))
            return
        if row.cells["kind"] not in KINDS:
            unknown = unknown_kind(row.cells["kind"])
            self.faults.append(table.fault(row.number, "kind", unknown.text, nearest(*unknown.meant) or unknown.hint))
            return
        fields: dict[str, Cell | dict[str, Cell]] = {}
        for column in table.columns:
            if column in row.cells and column != "name" and not column.startswith(OWN):
                self._place(table, row, column, fields)
        made.part(table, row.number, name, fields)

    def _place(self, table: CellTable, row: TableRow, column: str, fields: dict[str, Cell | dict[str, Cell]]) -> None:
        """The cell of a column as a field, or as one inside another."""
        key, unit = field_and_unit(column)
        cell = Cell(column, self._read(table, row, column, partial(self._value, table, key, unit)))
        head, _, rest = key.partition(_WITHIN)
        there = fields.get(head)
        if not rest and there is None:
            fields[head] = cell
        elif rest and (there is None or isinstance(there, dict)):
            fields.setdefault(head, {})[rest] = cell  # type: ignore[index]  # a mapping, as was asked
        else:
            text = f"{head} is told twice, whole and in parts"
            self.faults.append(table.fault(row.number, column, text, "fill in one of the columns"))

    def _pipe(self, table: CellTable, row: TableRow, made: LayoutLines) -> None:
        ends = [Cell(column, row.cells.get(column, "")) for column in PIPES]
        for cell in ends:
            if not cell.value:
                other = "to" if cell.column == "from" else "from"
                hint = f"the one in the column {other} joins to nothing"
                self.faults.append(table.fault(row.number, cell.column, "this pipe has no part at this end", hint))
            else:
                self._demand_part(table, row, cell)
        fields: dict[str, Cell] = {}
        for column in table.columns:
            key, unit = field_and_unit(column)
            if key in PIPE_FIELDS and column in row.cells:
                read = self._read(table, row, column, partial(self._value, table, key, unit))
                fields[key] = Cell(column, read)
        made.run(table, row.number, ends, fields)

    def _demand_part(self, table: CellTable, row: TableRow, cell: Cell) -> None:
        named = str(cell.value)
        name, dot, port = named.rpartition(_WITHIN)
        if dot and not port.isidentifier():
            self.faults.append(table.fault(row.number, cell.column, f"{quoted(port)} is no connection of a part"))
        name = name if dot else named
        if name not in self.names:
            where = " or ".join(one.name for one in self.tables.parts) or "a table of parts"
            text = f"{quoted(name)} is in no row of {where}"
            self.faults.append(table.fault(row.number, cell.column, text, nearest(name, self.names) or "add the part"))

    def _value(self, table: CellTable, key: str, unit: str, text: str) -> object:
        if is_text_column(key):
            return value_of(text, is_text=True)
        read = with_point(text, table.decimals)
        if is_bare_number(read) and is_quantity_column(key):
            if unit:
                return f"{read} {unit}"
            if not self.says_units:
                raise CellError(f"{quoted(text)} has no unit; {_UNIT_ADVICE}")
        return value_of(read, is_text=False)

    def _read(self, table: CellTable, row: TableRow, column: str, read: Callable[[str], object]) -> object:
        try:
            return read(row.cells[column])
        except CellError as error:
            self.faults.append(table.fault(row.number, column, str(error)))
            return ""


def _part_fault(column: str) -> tuple[str, str] | None:
    """What is wrong with a column of parts, and what would be right."""
    field, _ = field_and_unit(column)
    known = part_columns()
    if field in known or any(one.startswith(f"{field}{_WITHIN}") for one in known):
        return None
    return f"no kind of part has a field {quoted(field)}", nearest(field, known) or _KEEP


def _pipe_fault(column: str) -> tuple[str, str] | None:
    """What is wrong with a column of pipes, and what would be right."""
    field, _ = field_and_unit(column)
    known = (*PIPES, *PIPE_FIELDS, CONTENTS)
    if field in known:
        return None
    return f"no pipe has a field {quoted(field)}", nearest(field, known) or _KEEP


_SORTS = (
    "columns name and kind make parts, from and to make pipes, key and value tell of the layout; "
    "a sheet of yours has a name that begins with #"
)
_UNIT_ADVICE = (
    "write one behind it or into the head of the column, "
    "or say what a bare number means by --units or in a row units of a table of key and value"
)
_OF_INSTANCE = "/"
_NO_ASSEMBLIES = "a table holds no assemblies, so put - for the / of an instance, here and in the table of pipes"
_KEEP = f"to keep the column for yourself begin its name with {OWN}"
_Make = Callable[[CellTable, TableRow, LayoutLines], None]
_OfColumn = Callable[[str], tuple[str, str] | None]
_NEEDED: Mapping[str, str] = {"parts": "name and kind", "pipes": "from and to"}
