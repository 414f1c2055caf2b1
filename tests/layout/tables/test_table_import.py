"""Tables come to a layout, or every mistake in them is told where it stands."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.tables.table_faults import TableError
from plumbnet.layout.tables.table_import import layout_of
from plumbnet.layout.tables.table_reading import read_table

PARTS = """\
name;kind;volume [L];setpoint;pressure;relief.pressure;elevation;# seen
Straße;main;;;4,3 bar;;;
stop;valve;;;;;;on 3 June
speicher;storage_heater;190;60 °C;;10 bar;1,250 m;
hahn;fixture;;;;;2,5 m;
split;tee;;;;;;
"""
PIPES = """\
from;to;pipe;length;contents
Straße;stop;copper-B 22 mm;3,5 m;
stop;split;;;
split;speicher;;;
speicher;hahn.hot;;;0,3 l
split;hahn.cold;;;
"""


def imported(parts: str = PARTS, pipes: str = PIPES, *more: tuple[str, str]) -> str:
    tables = [("parts.csv", parts), ("pipes.csv", pipes), *more]
    return layout_of([read_table(text.encode("cp1252"), name) for name, text in tables]).text


def refusals(parts: str = PARTS, pipes: str = PIPES, *more: tuple[str, str]) -> list[str]:
    with pytest.raises(TableError) as refused:
        imported(parts, pipes, *more)
    return str(refused.value).splitlines()


def test_tables_of_a_european_spreadsheet_come_to_a_layout() -> None:
    assert (
        imported()
        == """\
plumbnet: 1
units: metric
parts:
  Straße: {kind: main, pressure: 4.3 bar}
  stop: {kind: valve}
  speicher: {kind: storage_heater, volume: 190 L, setpoint: 60 °C, relief: {pressure: 10 bar}, elevation: 1.250 m}
  hahn: {kind: fixture, elevation: 2.5 m}
  split: {kind: tee}
runs:
  - {path: Straße -> stop, pipe: copper-B 22 mm, length: 3.5 m}
  - stop -> split
  - split -> speicher
  - speicher -> hahn.hot
  - split -> hahn.cold
"""
    )


def test_what_is_said_of_the_whole_comes_from_keys_and_values() -> None:
    said = "key;value\ntitle;Mill, west wing\nunits;metric\nrules.water;ipc-2021\njob.number;007\njob.revision;B\n"
    shut = "scenarios.shut;{note: The stop is shut., change: [{close: stop}]}\n"
    system = read_system(imported(PARTS, PIPES, ("layout.csv", said + shut)).encode(), file="f")
    assert (system.title, system.units, system.job.number, system.job.revision) == (
        "Mill, west wing", "metric", "007", "B",
    )  # fmt: skip
    assert system.scenarios["shut"].note == "The stop is shut."


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("stop;valve", "stop;vlave", 'parts.csv, row 3, column kind: unknown kind "vlave": did you mean "valve"?'),
        ("split;tee", "split;", "parts.csv, row 6, column kind: split has no kind; for example valve"),
        ("stop;valve", "split;valve", 'parts.csv, row 6, column name: "split" is already the name of row 3'),
        (
            "stop;valve",
            "stops/1;valve",
            (
                'parts.csv, row 3, column name: "stops/1" is no name for a part; '
                "a table holds no assemblies, so put - for the / of an instance, here and in the table of pipes"
            ),
        ),
        ("split;tee", ";tee", "parts.csv, row 6, column name: this row has no name; give each part one of its own"),
        (
            "stop;valve",
            "st:op;valve",
            (
                'parts.csv, row 3, column name: "st:op" is no name for a part; '
                "use up to 60 letters, digits, _ and -, a letter or digit at each end"
            ),
        ),
        (
            "1,250 m",
            "1.250 m",
            'parts.csv, row 4, column elevation: "1.250 m" may be 1250 or 1.250; write 1250 m or 1,250 m',
        ),
        (
            "2,5 m",
            "2,5",
            (
                'parts.csv, row 5, column elevation: "2,5" has no unit; write one behind it or into the head '
                "of the column, or say what a bare number means by --units or in a row units of a table of key "
                "and value"
            ),
        ),
        (
            "relief.pressure",
            "relief.presure",
            (
                "parts.csv, row 1, column relief.presure: no kind of part has a field "
                '"relief.presure": did you mean "relief.pressure"?'
            ),
        ),
        ("name;kind", "name;Art", "parts.csv, row 1: the column kind is missing; "),
        (
            "4,3 bar",
            "4,3 kg",
            'parts.csv, row 2, column pressure: pressure: unknown unit "kg" in "4.3 kg"; write it like "430 kPa"',
        ),
        ("190;60 °C", "190;", 'parts.csv, row 4: speicher, a storage_heater, needs "setpoint"'),
    ],
)
def test_mistake_in_parts_is_told_at_its_cell(old: str, new: str, said: str) -> None:
    assert any(line.startswith(said) for line in refusals(PARTS.replace(old, new)))


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            "stop;split",
            "stop;spilt",
            'pipes.csv, row 3, column to: "spilt" is in no row of parts.csv: did you mean "split"?',
        ),
        ("hahn.hot", "tap.hot", 'pipes.csv, row 5, column to: "tap" is in no row of parts.csv; add the part'),
        (
            "stop;split",
            ";split",
            (
                "pipes.csv, row 3, column from: this pipe has no part at this end; "
                "the one in the column to joins to nothing"
            ),
        ),
        ("hahn.hot", "hahn.{", 'pipes.csv, row 5, column to: "{" is no connection of a part'),
        ("length;", "lenght;", 'pipes.csv, row 1, column lenght: no pipe has a field "lenght": did you mean "length"?'),
        ("22 mm", "23 mm", "pipes.csv, row 2, column pipe: copper-B tubes come in "),
        ("from;to", "from;zu", "pipes.csv, row 1: the column to is missing; there is from, zu, pipe, length, contents"),
        (
            "split;hahn.cold",
            "split;hahn.hot",
            "pipes.csv, row 6, column to: hahn.hot already has its pipe, from row 5 of pipes.csv",
        ),
    ],
)  # fmt: skip
def test_mistake_in_pipes_is_told_at_its_cell(old: str, new: str, said: str) -> None:
    assert any(line.startswith(said) for line in refusals(PARTS, PIPES.replace(old, new)))


def test_field_told_whole_and_in_parts_is_refused() -> None:
    parts = "name,kind,volume,setpoint,relief,relief.pressure\nh,boiler,5 gal,180 degF,{pressure: 30 psi},30 psi\n"
    assert (
        "parts.csv, row 2, column relief.pressure: relief is told twice, whole and in parts; fill in one of the columns"
        in refusals(parts, "from,to\nh.supply,h.return\n")
    )


def test_tables_of_nothing_known_and_missing_tables_are_told() -> None:
    assert refusals("Name;Art\n", PIPES) == [
        (
            "parts.csv, row 1: nothing is known of a table of Name, Art; columns name and kind make parts, "
            "from and to make pipes, key and value tell of the layout; "
            "a sheet of yours has a name that begins with #"
        )
    ]
    with pytest.raises(TableError) as refused:
        layout_of([read_table(PARTS.encode(), "parts.csv")])
    assert str(refused.value) == "the tables: there is none of pipes, which has the columns from and to"


def test_key_that_stands_twice_is_told() -> None:
    twice = ("layout.csv", "key,value\ntitle,one\ntitle,two\n")
    assert refusals(PARTS, PIPES, twice)[0] == 'layout.csv, row 3, column key: "title" stands here twice; keep one'


def test_schedule_of_tanks_is_passed_over_and_said_so() -> None:
    tables = [read_table(text.encode(), name) for name, text in (("p.csv", PARTS), ("q.csv", PIPES))]
    made = layout_of([*tables, read_table(b"tank,volume\nt,5 gal\n", "tanks.csv")])
    assert made.left_out == ("tanks.csv is a schedule made of the parts, and is not read.",)


def test_bare_numbers_mean_what_the_caller_says() -> None:
    parts = "name,kind,pressure\nstreet,main,400\ntap,fixture,\n"
    tables = [read_table(text.encode(), "t.csv") for text in (parts, "from,to\nstreet,tap.cold\n")]
    made = layout_of(tables, units="metric")
    assert made.text.splitlines()[1] == "units: metric"
    assert "pressure: 400" in made.text
