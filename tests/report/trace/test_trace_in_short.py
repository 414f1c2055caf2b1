"""A trace in the few sentences that a key has room for."""

from conftest import system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.report.trace.trace_in_short import ShortTrace, short_trace

RUNS = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def short(runs: str) -> ShortTrace:
    report = plumbnet.check(system(runs))
    return short_trace(report.facts, water_walk(report, report.heaters[0]))


def test_short_trace_has_how_it_stands_what_it_tries_and_the_verdict() -> None:
    found = short(RUNS)
    assert found.heater == "heater"
    assert found.cold.startswith("Cold, it stands at 60 psi. The limit is 80 psi")
    assert found.tries[0].startswith("Out of its cold connection: tee > cv. cv, a check valve, STOPS it")
    assert len(found.tries) == 3
    assert any("heater is TRAPPED" in end for end in found.ends)


def test_heater_that_no_water_reaches_stands_at_nothing() -> None:
    assert short("tee -> heater -> tap.hot\nstreet -> tap2.cold").cold == ""
