"""What stands behind an outlet that was taken for the first to open, and behind the pressure at which it does."""

from collections.abc import Iterator

from plumbnet.rules.facts import RungFacts
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.hint import BlankHints, Cause
from plumbnet.study.beliefs.outlet_beliefs import reducers_among, taken_for_first
from plumbnet.study.beliefs.pressure_causes import pressure_hints
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.exercise import Exercise


@reading("opens-first")
def opens_first_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is an outlet; the pressure is that of the first, as a gauge at the heater reads it."""
    asked = heater_asked(exercise)
    return (
        option_hints(exercise, lambda option: taken_for_first(asked, option)),
        *pressure_hints(asked, exercise, _causes(asked)),
    )


def _causes(asked: AskedHeater) -> Iterator[Cause]:
    heater, (first, *others) = asked.heater, asked.heater.ladder
    met = [name for names in heater.stopped_by.sets for name in names]
    for name, reducer in reducers_among(asked, met):
        set_ = asked.facts.pressure(reducer.set_pa)
        yield reducer.set_pa, asked.says("reducer-caps-pressure", reducer=name, set=set_)
    for rung in others:
        yield rung.opens_pa, asked.says("another-outlets-pressure", other=rung.outlet, outlet=first.outlet)
    for own_pa in _own(asked, first):
        yield own_pa, asked.says("height-forgotten", outlet=first.outlet)
    if heater.static_pa is not None:
        yield heater.static_pa, asked.says("cold-for-opening", outlet=first.outlet)
    yield heater.limit_pa, asked.says("limit-for-opening", outlet=first.outlet)


def _own(asked: AskedHeater, rung: RungFacts) -> Iterator[float]:
    """What an outlet opens at where it stands."""
    part = asked.parts.get(rung.outlet)
    return iter(()) if part is None else (outlet.opens_pa for outlet in part.outlets())
