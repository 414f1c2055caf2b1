"""What stands behind an outlet that was taken for the first to open, and behind the pressure at which it does."""

from collections.abc import Iterable, Iterator

from plumbnet.layout.model import Reducing, Role
from plumbnet.rules.facts import RungFacts
from plumbnet.study.beliefs.asked_heater import AskedHeater, reducing
from plumbnet.study.beliefs.device_beliefs import lost_tank_belief, past_the_stop
from plumbnet.study.beliefs.hint import BlankHints, Hint
from plumbnet.study.beliefs.pressure_causes import Cause, pressure_hints
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.exercise import Exercise


@reading("opens-first")
def opens_first_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is an outlet; the pressure is that of the first, as a gauge at the heater reads it."""
    asked = heater_asked(exercise)
    return (
        option_hints(exercise, lambda option: _named(asked, option)),
        *pressure_hints(asked, exercise, _causes(asked)),
    )


def _named(asked: AskedHeater, outlet: str) -> Hint:
    rung = next((rung for rung in asked.heater.ladder if rung.outlet == outlet), None)
    if rung is not None and rung.role is Role.SAFETY_RELIEF:
        return asked.says_of("relief-takes-care", rung, relief=outlet)
    if rung is not None:
        return _later(asked, rung)
    return _not_reached(asked, outlet)


def _later(asked: AskedHeater, rung: RungFacts) -> Hint:
    """Of an outlet that opens after the first: a tank by its charge, a street behind a bypass that opens too late."""
    tank = next((tank for tank in asked.facts.tanks if tank.name == rung.outlet), None)
    if tank is not None and tank.static_pa is not None and tank.precharge_pa > tank.static_pa:
        return asked.says("size-beats-charge", static=asked.facts.pressure(tank.static_pa))
    bypass = next((name for name, _ in _reducers(asked, rung.way)), None)
    if bypass is not None and rung.opens_pa > asked.heater.limit_pa:
        return asked.says_of("bypass-needs-no-tank", rung, reducer=bypass)
    return asked.says_of("opens-later", rung)


def _reducers(asked: AskedHeater, names: Iterable[str]) -> Iterator[tuple[str, Reducing]]:
    """The reducers among some parts."""
    for name in names:
        reducer = reducing(asked.parts[name]) if name in asked.parts else None
        if reducer is not None:
            yield name, reducer


def _not_reached(asked: AskedHeater, outlet: str) -> Hint:
    """Of an outlet that the growth does not come to: a tank cut off or without air, or a street behind a stop."""
    tank = next((tank for tank in asked.facts.tanks if tank.name == outlet), None)
    lost = None if tank is None else lost_tank_belief(asked, tank)
    if lost is not None:
        return lost
    if asked.parts[outlet].source() is not None and asked.stop is not None and asked.heater.way_out is None:
        return past_the_stop(asked)
    return asked.says("outlet-not-reached", outlet=outlet)


def _causes(asked: AskedHeater) -> Iterator[Cause]:
    heater, (first, *others) = asked.heater, asked.heater.ladder
    met = [name for names in heater.stopped_by.sets for name in names]
    for name, reducer in _reducers(asked, met):
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
