"""Mistakes in tables say table, row and column."""

from plumbnet.layout.tables.table_faults import TableError, TableFault


def test_mistakes_are_told_once_each_and_the_rest_is_counted() -> None:
    many = [TableFault("parts.csv", row, "", "wrong") for row in (2, 2, *range(2, 54))]
    lines = str(TableError(many)).splitlines()
    assert (lines[0], lines[1], lines[-1]) == ("parts.csv, row 2: wrong", "parts.csv, row 3: wrong", "and 2 more")


def test_what_does_not_print_is_shown() -> None:
    assert TableFault("a\x1b.csv", 0, "", "wrong", "mend it").sentence == r"a\x1b.csv: wrong; mend it"
