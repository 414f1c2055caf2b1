"""A state of a layout to the heat-up of one of its heaters, as the page plays it."""

from collections.abc import Iterator
from itertools import pairwise
from math import fsum
from typing import TypedDict

from plumbnet.analysis import Report
from plumbnet.analysis.warmup import HeaterWarmup, typical_warm_up
from plumbnet.layout.units import PRESSURE, TEMPERATURE, TIME, VOLUME, Dimension, to
from plumbnet.physics.warmup import Moment
from plumbnet.report.warmup import in_words, warmup_told

_FRAMES = 240
"""Moments that are kept of a course, some more where something happens."""


class HeatUpTold(TypedDict):
    """A heat-up from cold with every fixture shut, moment by moment, in the units of the report.

    `out` is the water let out so far, by all outlets; `happens` says after how many minutes what happens.
    """

    minutes: list[float]
    temperature: list[float]
    pressure: list[float]
    out: list[float]
    units: dict[str, str]
    happens: list[tuple[float, str]]


def heat_up(report: Report, heater: str) -> HeatUpTold:
    """The heat-up of a heater and of all that fire with it, with typical walls. Raises NoWarmUp."""
    warming = typical_warm_up(report, heater)
    one, moments = warming.fired[0], list(_kept(warming))

    def in_units(value: float, dimension: Dimension) -> float:
        return round(to(value, dimension.unit_name(report.facts.units), dimension), 3)

    return {
        "minutes": [in_units(each.time_s, TIME) for each in moments],
        "temperature": [in_units(each.temperatures_k[one.body], TEMPERATURE) for each in moments],
        "pressure": [
            in_units(warming.gauge_pa(one.name, each.pressures_abs_pa[one.zone]), PRESSURE) for each in moments
        ],
        "out": [in_units(fsum(each.lost_m3.values()), VOLUME) for each in moments],
        "units": {
            dimension.name: dimension.unit_name(report.facts.units) for dimension in (TEMPERATURE, PRESSURE, VOLUME)
        },
        "happens": [(in_units(event.time_s, TIME), in_words(warming, event)) for event in warmup_told(warming)],
    }


def _kept(warming: HeaterWarmup) -> Iterator[Moment]:
    """The first and the last moment, those at events, and of the others one a frame."""
    moments, events = warming.run.moments, {event.time_s for event in warming.run.events}
    yield moments[0]
    last_s, apart_s = moments[0].time_s, (moments[-1].time_s - moments[0].time_s) / _FRAMES
    for before, moment in pairwise(moments):
        is_told = moment.time_s in events or before.time_s in events or moment is moments[-1]
        if is_told or moment.time_s - last_s >= apart_s:
            last_s = moment.time_s
            yield moment
