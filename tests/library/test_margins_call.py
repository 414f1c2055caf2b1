"""Margins by a layout, a report or a heater's name."""

import pytest

import plumbnet
from plumbnet.library.margins_call import margins
from plumbnet.report.studies.margins_report import margins_text
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.remedies.remedy_search import remedies

HOUSE = "systems/house-with-check.yaml"


def test_margins_are_those_that_the_command_writes() -> None:
    report = plumbnet.check(HOUSE)
    found = margins(report)
    assert found == margins_of(report, found=remedies(report))
    assert found.to_text() == margins_text(found)
    assert margins(HOUSE).numbers == found.numbers


def test_heater_that_is_not_there_is_an_unknown_heater() -> None:
    assert margins(HOUSE, "heater").heater == "heater"
    with pytest.raises(plumbnet.UnknownHeater, match='no heater is called "boiler"'):
        margins(HOUSE, "boiler")
