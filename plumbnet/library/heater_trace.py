"""The way of the water in words, from a heater by its name or from each."""

from plumbnet.analysis import Report
from plumbnet.analysis.water_walk import water_walk
from plumbnet.api import Layout, as_report
from plumbnet.layout.yaml import visible
from plumbnet.library.heater_choice import heater_named
from plumbnet.report.trace import trace_text


def trace(layout: Layout | Report, heater: str | None = None) -> str:
    """The way of the water in words: where it can go, what stops it, what opens; from each heater where none is named.

    `layout` is a report, or what `check` makes one of; words are in its units. Raises UnknownHeater, and what `check`
    does.

    >>> print(trace("systems/house-with-check.yaml", "heater").splitlines()[0])
    heater is a storage heater. Every fixture is shut, and it heats up.
    """
    report = as_report(layout)
    chosen = report.heaters if heater is None else [heater_named(report, heater)]
    supposed = [] if report.scenario is None else [f"Scenario: {visible(report.scenario)}\n"]
    told = (trace_text(report.facts, water_walk(report, one)) for one in chosen)
    return "\n".join([*supposed, "\n\n".join(told)])
