"""What was thought of an outlet: by who had it open where something else opens before, or nothing comes to it."""

from collections.abc import Iterable, Iterator

from plumbnet.layout.model import Reducing, Role
from plumbnet.rules.facts import RungFacts
from plumbnet.study.beliefs.asked_heater import AskedHeater, reducing
from plumbnet.study.beliefs.device_beliefs import lost_tank_belief, past_the_stop
from plumbnet.study.beliefs.hint import Hint


def taken_for_first(asked: AskedHeater, outlet: str) -> Hint:
    """Of who had an outlet open first that does not."""
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
    bypass = next((name for name, _ in reducers_among(asked, rung.way)), None)
    if bypass is not None and rung.opens_pa > asked.heater.limit_pa:
        return asked.says_of("bypass-needs-no-tank", rung, reducer=bypass)
    return asked.says_of("opens-later", rung)


def reducers_among(asked: AskedHeater, names: Iterable[str]) -> Iterator[tuple[str, Reducing]]:
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
