import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.verdict_words import Verdict

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def facts(runs: str) -> Facts:
    return plumbnet.check(system(runs)).facts


def test_quantities_are_told_in_the_units_of_the_report() -> None:
    us = facts(CLOSED)
    assert us.pressure(60 * PSI) == "60 psi"
    assert us.length(0.3048) == "1 ft"
    assert us.volume(0.003785411784) == "1 gal"
    assert us.temperature(333.15) == "140 degF"
    assert us.power(40_000 * 1055.05585262 / 3600) == "40,000 Btu/h"
    metric = plumbnet.check(system(CLOSED), units="metric").facts
    assert metric.pressure(60 * PSI) == "414 kPa"
    assert metric.length(1.5) == "1.5 m"
    assert metric.volume(0.0189) == "18.9 L"
    assert metric.temperature(333.15) == "60 degC"
    assert metric.power(11_700.0) == "11.7 kW"


def test_facts_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        facts(CLOSED).heaters[0].verdict = Verdict.OPEN  # type: ignore[misc]  # that it cannot be set is the test
