"""A warm-up as lines and marks: minutes, temperatures and pressures in a report's units, and its events grouped."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from plumbnet.analysis.warmup import HeaterWarmup
from plumbnet.layout.units import PRESSURE, TEMPERATURE, Dimension, Units
from plumbnet.physics.warmup import WarmupEvent, WarmupHappening
from plumbnet.report.charts.chart_scale import scaled
from plumbnet.report.warmup import in_words, time_in_words, warmup_told

MOST_MARKS = 9
"""Marks on one line; what happens later is left to the table of the warm-up."""
_TOGETHER = 0.01  # of the whole time: what happens within it bears one mark
_SECONDS = 60.0


@dataclass(frozen=True, slots=True)
class EventMark:
    """Where something happens on the line of pressure, and what, in words; in the units of the report."""

    minutes: float
    pressure: float
    words: str


@dataclass(frozen=True)
class Course:
    """The course of the heater that a warm-up was asked for."""

    warming: HeaterWarmup

    @cached_property
    def minutes(self) -> tuple[float, ...]:
        """Time of every moment."""
        return tuple(time_s / _SECONDS for time_s in self.warming.run.times_s)

    @cached_property
    def temperatures(self) -> tuple[float, ...]:
        """Temperature of its water at every moment."""
        return tuple(self._shown(each, TEMPERATURE) for each in self.warming.temperatures_k(self.warming.fired[0]))

    @cached_property
    def pressures(self) -> tuple[float, ...]:
        """Pressure at the heater at every moment."""
        return tuple(self._shown(each, PRESSURE) for each in self.warming.pressures_pa(self.warming.fired[0]))

    @property
    def limit(self) -> float:
        """The highest pressure it may reach."""
        return self._shown(self.warming.fired[0].limit_pa, PRESSURE)

    def marks(self) -> list[EventMark]:
        """What happens, in order; that the burner lights at the start goes without saying."""
        return [self._mark(events) for events in self._together()][:MOST_MARKS]

    def _mark(self, events: list[WarmupEvent]) -> EventMark:
        minutes = events[0].time_s / _SECONDS
        pressure = float(np.interp(minutes, self.minutes, self.pressures))
        words = "; ".join(dict.fromkeys(in_words(self.warming, event) for event in events))
        return EventMark(minutes, pressure, f"{time_in_words(self.warming, events[0].time_s)}: {words}")

    def _together(self) -> Iterator[list[WarmupEvent]]:
        """Events so near in time that their marks would lie on each other."""
        apart_s = _TOGETHER * self.warming.run.times_s[-1]
        group: list[WarmupEvent] = []
        for event in warmup_told(self.warming):
            if event.what is WarmupHappening.BURNER_ON:
                continue
            if group and event.time_s - group[0].time_s > apart_s:
                yield group
                group = []
            group.append(event)
        if group:
            yield group

    @property
    def _units(self) -> Units:
        return self.warming.report.facts.units

    def _shown(self, value: float, dimension: Dimension) -> float:
        return scaled(value, dimension, self._units)
