"""Calculation sheets by a heater's name."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.layout.units.units import Units
from plumbnet.library.heater_sheet import size
from plumbnet.report.sheets.sheet_report import sheets_text

HOUSE = system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")


@pytest.mark.parametrize("units", ["us", "metric"])
def test_sheet_and_its_text_are_those_that_the_command_writes(units: Units) -> None:
    report = plumbnet.check(HOUSE, units=units)
    sheet = size(report, "heater")
    assert [sheet] == list(sheets(report, list(report.heaters)))
    assert sheet.to_text() == sheets_text([sheet], units)


def test_method_asked_for_goes_before_the_profiles() -> None:
    assert size(HOUSE, "heater", method="uk-4-percent").method.name == "uk-4-percent"


def test_heater_that_is_not_there_is_an_unknown_heater() -> None:
    with pytest.raises(plumbnet.UnknownHeater, match='no heater is called "boiler"'):
        size(HOUSE, "boiler")
