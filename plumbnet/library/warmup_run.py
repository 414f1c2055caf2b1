"""The warm-up of a heater by its name."""

from plumbnet.analysis import Report
from plumbnet.analysis.warmup import HeaterWarmup, warm_up
from plumbnet.api import Layout, as_report
from plumbnet.library.heater_choice import heater_named


def warmup(layout: Layout | Report, heater: str, *, minutes: float | None = None) -> HeaterWarmup:
    """Temperature, pressure and water lost against time, from a cold start with every fixture shut.

    `layout` is a report, or what `check` makes one of. It lasts until all is hot, or so many `minutes`. Times are in s,
    pressures in Pa, temperatures in K. Raises UnknownHeater, NoWarmUp where nothing can warm up, and what `check` does.

    >>> warming = warmup("systems/house-with-check.yaml", "heater")
    >>> (heater,) = warming.fired
    >>> round(warming.temperatures_k(heater)[-1], 2), warming.outlets
    (333.15, ('heater/relief',))
    """
    report = as_report(layout)
    return warm_up(report, heater_named(report, heater).name, minutes=minutes)
