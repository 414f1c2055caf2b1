"""Lines of a layout know the cells that they were made of."""

from plumbnet.layout.tables.layout_lines import Cell, LayoutLines
from plumbnet.layout.tables.table_reading import CellTable
from plumbnet.layout.yaml import Fault, LayoutError

PARTS, PIPES = CellTable("parts.csv", ("name", "kind"), ()), CellTable("pipes.csv", ("from", "to"), ())


def test_mistake_is_told_of_the_cell_or_the_row_or_the_tables() -> None:
    made = LayoutLines()
    made.heading("plumbnet: 1")
    inner = {"pressure": Cell("relief.pressure", "150 psi")}
    made.part(PARTS, 7, "heater", {"kind": Cell("kind", "boiler"), "relief": inner})
    made.run(PIPES, 3, (Cell("from", "a"), Cell("to", "b.hot")), {"length": Cell("length", "3 m")})
    _, part, run = made.text().splitlines()
    assert part == "  heater: {kind: boiler, relief: {pressure: 150 psi}}"
    assert run == "  - {path: a -> b.hot, length: 3 m}"
    faults = [
        Fault(1, 1, "wrong"),
        Fault(2, 3, "row"),
        Fault(2, part.index("150") + 1, "cell"),
        Fault(3, run.index("b.hot") + 1, "taken, from line 3", "mend it"),
    ]
    assert [fault.sentence for fault in made.faults(LayoutError("", faults))] == [
        "the tables: wrong",
        "parts.csv, row 7: row",
        "parts.csv, row 7, column relief.pressure: cell",
        "pipes.csv, row 3, column to: taken, from row 3 of pipes.csv; mend it",
    ]
