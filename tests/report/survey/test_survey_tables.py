import sqlite3
from contextlib import closing

import pytest
from conftest import system

import plumbnet
from plumbnet.report.formats.csv1 import COLUMNS
from plumbnet.report.survey.survey_entry import WhatIfFate, answered
from plumbnet.report.survey.survey_tables import APPLICATION, TABLES
from plumbnet.study.whatif.what_if import untouched

HOUSE = system("street -> cv -> heater -> tap.hot")


def columns(table: str) -> list[str]:
    with closing(sqlite3.connect(":memory:")) as file:
        for statement in TABLES:
            file.execute(statement)
        return [name for (name,) in file.execute("SELECT name FROM pragma_table_info(?)", (table,))]


@pytest.mark.parametrize("table", ["file", "heater", "finding"])
def test_every_cell_of_an_entry_has_its_column_and_no_other_is_there(table: str) -> None:
    report = plumbnet.check(HOUSE)
    entry = answered("f", report, untouched(report), WhatIfFate.NOT_TOUCHED)
    rows = {"file": [entry.file], "heater": entry.heaters, "finding": entry.findings}[table]
    silenced = {"reason", "accepted_by", "accepted_line", "claimed", "stands_as"}
    own = {"file": {"id", "path", "sha256", "fate", "is_present"}, "heater": {"file"}, "finding": {"file", *silenced}}
    for row in rows:
        assert {*row, *own[table]} == set(columns(table))


def test_columns_of_a_heater_are_called_as_in_the_table_for_spreadsheets() -> None:
    names = [name for name in columns("heater") if not name.startswith(("after_", "is_"))]
    assert [name for name in names if name not in COLUMNS] == []


def test_application_is_four_letters() -> None:
    assert APPLICATION.to_bytes(4) == b"plmb"
    assert APPLICATION < 2**31
