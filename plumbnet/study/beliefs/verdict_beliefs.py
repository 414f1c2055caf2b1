"""What was thought by who took a heater's verdict for another one."""

from collections.abc import Callable, Mapping

from plumbnet.rules.facts import TankFacts, Verdict
from plumbnet.study.beliefs.asked_heater import AskedHeater, reducing
from plumbnet.study.beliefs.device_beliefs import lost_tank_belief, past_the_stop
from plumbnet.study.beliefs.hint import Hint


def verdict_belief(asked: AskedHeater, taken: Verdict) -> Hint:
    """What stands behind `taken`, which is not what becomes of the heater's growth."""
    if asked.heater.verdict is Verdict.OPEN:
        return _OF_OPEN[taken](asked)
    if taken is Verdict.OPEN:
        return past_the_stop(asked)
    if asked.heater.verdict is Verdict.ON_DEMAND:
        return asked.says("fires-without-draw")
    return _OF_CLOSED[taken](asked)


def likely_verdict(asked: AskedHeater) -> Verdict:
    """What a trapped heater was most likely taken for."""
    if asked.heater.on_flow:
        return Verdict.ON_DEMAND
    return Verdict.CONTROLLED if asked.lost_tank is not None else Verdict.OPEN


def _shut_though_open(asked: AskedHeater) -> Hint:
    way = asked.heater.way_out
    if way is None:
        return asked.says("no-way-there")
    if asked.heater.static_pa is not None and asked.heater.static_pa > asked.heater.limit_pa:
        return asked.says("high-is-trapped")
    bypass = next((name for name in way.way if name in asked.parts and reducing(asked.parts[name])), None)
    if bypass is not None:
        return asked.says_of("bypass-overlooked", way, device=bypass)
    if asked.pump is not None:
        return asked.says_of("pump-raises-pressure", way, pump=asked.pump)
    return asked.says_of("way-out-overlooked", way)


def _held_though_open(asked: AskedHeater) -> Hint:
    way, relief = asked.heater.way_out, asked.relief
    if way is None or (not asked.heater.has_control and relief is not None):
        return _left_to_relief(asked)
    return asked.says_of("control-before-way-out", way)


def _waits_though_open(asked: AskedHeater) -> Hint:
    way = asked.heater.way_out
    if asked.heater.on_flow and way is not None:
        return asked.says_of("open-before-on-demand", way)
    return asked.says("somebody-opens-a-tap")


def _held(asked: AskedHeater) -> Hint:
    """Of who had something take the growth of a heater that is trapped or sealed."""
    tank, stop = asked.lost_tank, asked.stop
    if tank is not None:
        return _of_tank(asked, tank)
    reducer = None if stop is None else reducing(asked.parts[stop])
    if stop is not None and reducer is not None and not reducer.bypass:
        return asked.says("reducer-caps-pressure", reducer=stop, set=asked.facts.pressure(reducer.set_pa))
    return _left_to_relief(asked)


def _of_tank(asked: AskedHeater, tank: TankFacts) -> Hint:
    lost = lost_tank_belief(asked, tank)
    if lost is not None:
        return lost
    tolerance_pa = asked.report.profile_of(tank.name).charge_tolerance.value_pa
    if tank.static_pa is not None and tank.is_charged_wrong(tolerance_pa):
        return asked.says("size-beats-charge", static=asked.facts.pressure(tank.static_pa))
    return asked.says("few-degrees-do-not-matter")


def _left_to_relief(asked: AskedHeater) -> Hint:
    relief = asked.relief
    if relief is None:
        return asked.says("no-relief-there")
    return asked.says_of("relief-takes-care", relief, relief=relief.outlet)


def _trapped(asked: AskedHeater) -> Hint:
    control = asked.control
    if asked.heater.verdict is Verdict.SEALED or control is None:
        return asked.says("no-relief-there")
    return asked.says("control-overlooked", control=control.outlet)


def _waits(asked: AskedHeater) -> Hint:
    pump = asked.pump
    if asked.heater.on_flow and pump is not None:
        return asked.says("tankless-never", pump=pump)
    return asked.says("somebody-opens-a-tap")


def _sealed(asked: AskedHeater) -> Hint:
    if asked.control is not None and asked.heater.verdict is Verdict.CONTROLLED:
        return asked.says("control-overlooked", control=asked.control.outlet)
    relief = asked.relief
    return (
        asked.says("no-relief-there")
        if relief is None
        else asked.says_of("relief-overlooked", relief, relief=relief.outlet)
    )


_OF_OPEN: Mapping[Verdict, Callable[[AskedHeater], Hint]] = {
    Verdict.CONTROLLED: _held_though_open,
    Verdict.TRAPPED: _shut_though_open,
    Verdict.SEALED: _shut_though_open,
    Verdict.ON_DEMAND: _waits_though_open,
}
_OF_CLOSED: Mapping[Verdict, Callable[[AskedHeater], Hint]] = {
    Verdict.CONTROLLED: _held,
    Verdict.TRAPPED: _trapped,
    Verdict.SEALED: _sealed,
    Verdict.ON_DEMAND: _waits,
}
