"""The way of the water by a heater's name."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.library.heater_trace import trace
from plumbnet.report.trace.trace_report import trace_text

TWO = plumbnet.check(system("street -> tee -> cv -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"))


def test_every_heater_is_followed_where_none_is_named() -> None:
    first, second = (trace_text(TWO.facts, water_walk(TWO, heater)) for heater in TWO.heaters)
    assert trace(TWO, "heater2") == second
    assert trace(TWO) == f"{first}\n\n{second}"


def test_scenario_is_told_first() -> None:
    report = plumbnet.whatif("systems/house-with-check.yaml", scenario="check-leaks").after
    first, second = trace(report).split("\n\n")[:2]
    assert first == "Scenario: check-leaks"
    assert second.startswith("heater is a storage heater.")


def test_heater_that_is_not_there_is_an_unknown_heater() -> None:
    with pytest.raises(plumbnet.UnknownHeater, match='no heater is called "boiler"'):
        trace(TWO, "boiler")
