"""What stands behind a tank of another size, and behind another charge."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.units import GALLON, LITRE, PSI, VOLUME, QuantityError, customary, parse_measure, show
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import nominal_sizes
from plumbnet.study.beliefs.asked_heater import AskedHeater, reducing
from plumbnet.study.beliefs.hint import BlankHints, Cause, Hint
from plumbnet.study.beliefs.pressure_causes import pressure_hints
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.exercise import Choice, Exercise

_FACTORY_PSI = (12.0, 40.0)
"""What tanks are charged to as they come, for heating and for water (common practice, from memory)."""


@reading("tank")
def tank_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is a size, or that no tank can do it; the pressure is the charge."""
    asked = heater_asked(exercise)
    return (_sizes(exercise, asked), *pressure_hints(asked, exercise, _charges(asked)))


def _sizes(exercise: Exercise, asked: AskedHeater) -> BlankHints:
    blank = exercise.asked.blanks[0]
    right_m3 = _volume(asked, blank.right) if isinstance(blank, Choice) else None
    causes = [] if right_m3 is None else [*_wrong_sizes(asked, right_m3)]

    def read(option: str) -> Hint:
        size_m3 = _volume(asked, option)
        if right_m3 is None:
            return asked.says("high-is-trapped")
        if size_m3 is None:
            return _no_size(asked)
        known = next((hint for made, hint in causes if made == option), None)
        return known or asked.says("few-degrees-do-not-matter" if size_m3 < right_m3 else "size-beats-charge")

    return option_hints(exercise, read)


def _no_size(asked: AskedHeater) -> Hint:
    """Of who found no room for a tank: by the street before a reducer, or by nothing else that is known."""
    streets = (reducer for reducer, street_pa in _streets(asked) if street_pa >= asked.heater.limit_pa)
    reducer = next(streets, None)
    return asked.says("size-needed-after-all") if reducer is None else asked.says("street-for-line", reducer=reducer)


def _volume(asked: AskedHeater, option: str) -> float | None:
    """An option as a volume in cubic metres; None where it is none."""
    try:
        return parse_measure(option, VOLUME, asked.facts.units)
    except QuantityError:
        return None


def _wrong_sizes(asked: AskedHeater, right_m3: float) -> Iterator[tuple[str, Hint]]:
    """The sizes to which slips lead, each with its slip, as options are written."""
    units = asked.facts.units
    sizes = nominal_sizes(customary(units))
    for least_m3, hint in _wrong_volumes(asked, right_m3):
        size = next((size for size in sizes if size >= least_m3), None)
        if size is not None and least_m3 > 0.0:
            yield show(size, VOLUME, units), hint


def _wrong_volumes(asked: AskedHeater, right_m3: float) -> Iterator[tuple[float, Hint]]:
    boyle, heater = _boyle(asked), asked.heater
    grown_m3 = heater.shared_expansion_m3
    if heater.shares_with:
        yield boyle.tank_m3(heater.expansion_m3), asked.says("own-growth-alone")
    yield boyle.tank_m3(sum(one.expansion_m3 for one in asked.report.heaters)), asked.says("too-much-water-counted")
    for reducer, street_pa in _streets(asked):
        yield boyle.starting(street_pa).tank_m3(grown_m3), asked.says("street-for-line", reducer=reducer)
    yield boyle.gauge_m3(grown_m3), asked.says("gauge-for-absolute")
    yield grown_m3, asked.says("growth-for-size")
    if asked.relief is not None:
        ended = _Boyle(boyle.start_pa, asked.relief.opens_pa)
        yield ended.tank_m3(grown_m3), asked.says("relief-for-limit", relief=asked.relief.outlet)
    for ratio in (GALLON / LITRE, LITRE / GALLON):
        yield right_m3 * ratio, asked.says("other-unit-of-volume")


@dataclass(frozen=True, slots=True)
class _Boyle:
    """A tank that is pressed together from one gauge pressure to another, by Boyle's law."""

    start_pa: float
    end_pa: float

    def starting(self, start_pa: float) -> "_Boyle":
        """The same end from another start."""
        return _Boyle(start_pa, self.end_pa)

    def tank_m3(self, grown_m3: float) -> float:
        """The least tank for a growth; 0 where none can take it."""
        return _least(grown_m3, self.start_pa + ATMOSPHERE_PA, self.end_pa + ATMOSPHERE_PA)

    def gauge_m3(self, grown_m3: float) -> float:
        """That by who puts in the pressures as a gauge shows them."""
        return _least(grown_m3, self.start_pa, self.end_pa)


def _least(grown_m3: float, start: float, end: float) -> float:
    return grown_m3 / (1.0 - start / end) if 0.0 < start < end else 0.0


def _boyle(asked: AskedHeater) -> _Boyle:
    heater = asked.heater
    return _Boyle(heater.limit_pa if heater.static_pa is None else heater.static_pa, heater.limit_pa)


def _streets(asked: AskedHeater) -> Iterator[tuple[str, float]]:
    """The first reducer, with what each street stands at."""
    reducer = next((name for name, part in asked.parts.items() if reducing(part) is not None), None)
    for part in asked.parts.values():
        source = part.source()
        if reducer is not None and source is not None:
            yield reducer, source.pressure_pa


def _charges(asked: AskedHeater) -> Iterator[Cause]:
    for reducer, street_pa in _streets(asked):
        yield street_pa, asked.says("street-for-line", reducer=reducer)
    for factory in _FACTORY_PSI:
        static_pa = asked.heater.static_pa or 0.0
        yield factory * PSI, asked.says("size-beats-charge", static=asked.facts.pressure(static_pa))
    yield asked.heater.limit_pa, asked.says("limit-for-charge")
    if asked.relief is not None:
        yield asked.relief.opens_pa, asked.says("relief-for-limit", relief=asked.relief.outlet)
