"""The walk and the ladder of a trace: two searches that name the same outlets."""

from conftest import times
from hypothesis import given
from hypothesis import strategies as st

from oracles.joined_layouts import joined_layouts
from oracles.random_closed import closed_layouts
from oracles.random_layouts import Layout, layouts
from oracles.test_sweep import checked
from plumbnet.analysis.report import Report
from plumbnet.network.outlets.ladder import MOST_RUNGS
from plumbnet.report.prose.phrases import spoken
from plumbnet.report.trace.walk import walked
from plumbnet.rules.facts import HeaterFacts


@times(1.0)
@given(st.one_of(joined_layouts(), closed_layouts(), layouts()))
def test_walk_meets_the_outlets_of_the_ladder_and_no_others(layout: Layout) -> None:
    report = checked(layout, "general")
    for heater in report.heaters:
        if len(heater.ladder) < MOST_RUNGS:
            assert met(report, heater) == {rung.outlet for rung in heater.ladder}, heater.name


def met(report: Report, heater: HeaterFacts) -> set[str]:
    """Outlets that the walk says take some of the water."""
    lines = list(walked(report, heater))
    return {
        name
        for name, part in report.system.parts.items()
        if any(True for _ in part.outlets())
        for line in lines
        if f"{name}, {spoken(part.kind)}: " in line
        and not any(words in line for words in ("takes none of it", "shut, a dead end"))
    }
