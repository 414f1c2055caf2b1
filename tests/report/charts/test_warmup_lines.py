"""A warm-up as a chart shows it: minutes, the report's units, and what happens in few marks."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.warmup.heater_warmup import warm_up
from plumbnet.report.charts.warmup_lines import Course

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def course(runs: str = HOUSE, **parts: str) -> Course:
    report = plumbnet.check(system(runs, **({"heater": "relief: {pressure: 150 psi}"} | parts)))
    return Course(warm_up(report, report.heaters[0].name))


def test_course_runs_from_cold_to_the_setpoint_in_the_file_s_units() -> None:
    found = course()
    assert found.temperatures[0] == pytest.approx(50.0)
    assert found.temperatures[-1] == pytest.approx(140.0, abs=0.1)
    assert found.pressures[0] == pytest.approx(60.0, abs=0.01)
    assert max(found.pressures) == pytest.approx(150.0, abs=0.01)
    assert found.limit == pytest.approx(80.0)
    assert 60.0 < found.minutes[-1] < 80.0


def test_what_happens_at_once_bears_one_mark() -> None:
    limit, relief, hot = course().marks()
    assert "passes the limit of 80 psi" in limit.words
    assert "heater/relief opens at 150 psi" in relief.words
    assert "reaches its setpoint" in hot.words
    assert "heater/relief closes again" in hot.words
    assert limit.pressure == pytest.approx(80.0, abs=0.1)


def test_that_the_burner_lights_goes_without_saying() -> None:
    assert not any("lights" in mark.words for mark in course().marks())
