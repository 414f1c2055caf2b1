"""Warm-ups by a heater's name."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.warmup.heater_warmup import NoWarmUp, warm_up
from plumbnet.library.warmup_run import warmup
from plumbnet.report.warmup.warmup_report import warmup_text

HOUSE = system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")


def test_warm_up_and_its_text_are_those_that_the_command_writes() -> None:
    report = plumbnet.check(HOUSE)
    warming = warmup(report, "heater", minutes=5.0)
    assert warming == warm_up(report, "heater", minutes=5.0)
    assert warming.to_text() == warmup_text(warming)


def test_heater_that_is_not_there_is_an_unknown_heater() -> None:
    with pytest.raises(plumbnet.UnknownHeater, match='did you mean "heater"'):
        warmup(HOUSE, "heatr")


def test_heater_that_cannot_warm_up_says_why() -> None:
    with pytest.raises(NoWarmUp, match="lacks an input"):
        warmup(system("street -> cv -> indirect -> tap.hot"), "indirect")
