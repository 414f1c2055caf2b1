"""Tables are read as spreadsheets save them, and told what is wrong with them."""

import pytest

from plumbnet.layout.tables.table_faults import TableError
from plumbnet.layout.tables.table_reading import of_columns, read_table

TEXT = 'name;kind;pressure\r\nStraße;main;"4,3 bar"\r\n;;\r\nstop;valve;\r\n'


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
@pytest.mark.parametrize("delimiter", [";", ",", "\t"])
def test_encoding_and_delimiter_are_found_out(encoding: str, delimiter: str) -> None:
    table = read_table(TEXT.replace(";", delimiter).encode(encoding), "parts.csv")
    assert table.columns == ("name", "kind", "pressure")
    assert [(row.number, dict(row.cells)) for row in table.rows] == [
        (2, {"name": "Straße", "kind": "main", "pressure": "4,3 bar"}),
        (4, {"name": "stop", "kind": "valve"}),
    ]
    assert table.decimals == {";": "comma", ",": "point", "\t": "unsure"}[delimiter]


def test_line_that_names_the_delimiter_is_no_row() -> None:
    assert read_table(b"sep=;\r\nname;kind\r\nsplit;tee\r\n", "parts.csv").rows[0].number == 2


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "t.csv: this table is empty; its first row names the columns"),
        (b"name,kind,kind\n", "t.csv, row 1, column kind: two columns have this name; keep one of them"),
        (
            b"name,kind\nsplit,tee,4\n",
            (
                "t.csv, row 2: this row has more cells than the table has columns, which is 2; "
                "put text that holds the delimiter in quotes"
            ),
        ),
        (b"na\x81me,kind\n", "t.csv: its encoding is not one that is read; save it as CSV UTF-8"),
        (b"\xd0\xcf\x11\xe0", "t.csv: this is a workbook of the old form; save it as .xlsx or as CSV"),
        (b'name,kind\n"split,tee\n', "t.csv: this is no table in CSV: unexpected end of data"),
    ],
)
def test_what_is_wrong_with_a_table_is_one_sentence(data: bytes, said: str) -> None:
    with pytest.raises(TableError) as refused:
        read_table(data, "t.csv")
    assert str(refused.value) == said


def test_missing_column_is_named_with_what_may_be_meant() -> None:
    table = read_table(b"nmae,sort\n", "t.csv")
    assert [fault.sentence for fault in of_columns(table, ("name", "kind"))] == [
        't.csv, row 1: the column name is missing: is it the one called "nmae"?',
        "t.csv, row 1: the column kind is missing; there is nmae, sort",
    ]
