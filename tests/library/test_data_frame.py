"""The heaters of a report as a table of pandas."""

import math
import sys

import pytest
from conftest import system

import plumbnet
from plumbnet.library.data_frame import FRAME_COLUMNS, MISSING, UNITS, heaters_frame
from plumbnet.report.formats.csv1 import heater_cells

REPORT = plumbnet.check("systems/school-shared-tanks.yaml")


def test_frame_has_a_row_to_each_heater_with_the_numbers_of_the_report() -> None:
    frame = REPORT.to_frame()
    assert list(frame.columns) == list(FRAME_COLUMNS)
    assert list(frame["name"]) == [heater.name for heater in REPORT.heaters]
    assert list(frame["verdict"]) == [heater.verdict.value for heater in REPORT.heaters]
    assert list(frame["limit_pa"]) == [heater.limit_pa for heater in REPORT.heaters]
    assert set(frame["file"]) == {"systems/school-shared-tanks.yaml"}


def test_columns_are_those_of_a_heater_in_the_csv() -> None:
    assert list(FRAME_COLUMNS[1:]) == list(heater_cells(REPORT.heaters[0]))


def test_quantities_are_numbers_where_nobody_has_one() -> None:
    frame = heaters_frame(plumbnet.check(system("street -> heater -> tap.hot")))
    assert math.isnan(frame["need_tank_m3"][0])
    assert {str(frame[column].dtype) for column in FRAME_COLUMNS if column.endswith(UNITS)} == {"float64"}


def test_layout_without_heaters_has_the_columns_and_no_row() -> None:
    frame = heaters_frame(plumbnet.check(system("street -> tap.cold")))
    assert frame.shape == (0, len(FRAME_COLUMNS))


def test_frame_without_pandas_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "pandas", None)
    with pytest.raises(ImportError) as caught:
        REPORT.to_frame()
    assert (
        str(caught.value) == 'a table needs pandas, which is not installed: pip install "plumbnet[frames]"' == MISSING
    )
