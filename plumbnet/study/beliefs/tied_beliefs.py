"""A belief that somebody ties to an answer by its name, told in the words of a layout that shows it."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from plumbnet.analysis import Report
from plumbnet.rules.facts import RungFacts, Verdict
from plumbnet.study.beliefs.asked_heater import AskedHeater, has_hidden_check, reducing
from plumbnet.study.beliefs.device_beliefs import lost_tank_belief
from plumbnet.study.beliefs.hint import Hint

Found = TypeVar("Found")


class NotShown(LookupError):
    """A layout does not show what a belief is answered with; says in words what it lacks."""


def chosen_belief(report: Report, heater: str, name: str) -> Hint:
    """What is said of a belief where it is held of a heater.

    Raises NotShown where what would be said is not so there, as always of a misreading, which is told of one answer.
    """
    told = _TOLD.get(name)
    if told is None:
        raise NotShown("the one answer that was misread")
    found = {one.name: one for one in report.heaters}
    return told(AskedHeater(report, found[heater]))


def _there(found: Found | None, lacking: str) -> Found:
    if found is None:
        raise NotShown(lacking)
    return found


def _first(asked: AskedHeater) -> RungFacts:
    """What the growth comes to within the limit."""
    return _there(asked.heater.way_out or asked.control, "something that takes the growth")


def _bigger(asked: AskedHeater) -> Hint:
    opens = next(iter(asked.heater.ladder), None)
    return asked.says("bigger-heater-higher-pressure", outlet=_there(opens, "anything that opens").outlet)


def _stops(asked: AskedHeater) -> list[str]:
    """The devices that stop the water, each as good as the others."""
    return [name for names in asked.heater.stopped_by.sets for name in names]


def _relief(asked: AskedHeater) -> Hint:
    relief = asked.relief
    if relief is None or relief.opens_pa <= asked.heater.limit_pa:
        raise NotShown("a relief valve that opens above the limit")
    return asked.says_of("relief-takes-care", relief, relief=relief.outlet)


def _reducer(asked: AskedHeater) -> Hint:
    found = ((name, reducing(asked.parts[name])) for name in _stops(asked))
    shut = next(((name, one) for name, one in found if one is not None and not one.bypass), None)
    name, reducer = _there(shut, "a reducer without a bypass that stops the water")
    return asked.says("reducer-caps-pressure", reducer=name, set=asked.facts.pressure(reducer.set_pa))


def _bypass(asked: AskedHeater) -> Hint:
    way, lacking = asked.heater.way_out, "a reducer whose bypass opens only past the limit"
    found = ((name, reducing(asked.parts[name])) for name in _stops(asked))
    passed = _there(next((name for name, one in found if one is not None and one.bypass), None), lacking)
    return asked.says_of("bypass-needs-no-tank", _there(way, lacking), reducer=passed)


def _meter(asked: AskedHeater) -> Hint:
    device = next((name for name in _stops(asked) if has_hidden_check(asked.parts[name])), None)
    return asked.says("meter-is-no-valve", device=_there(device, "a meter with a check that stops the water"))


def _any_tank(asked: AskedHeater) -> Hint:
    told = (lost_tank_belief(asked, tank) for tank in asked.facts.tanks)
    elsewhere = next((hint for hint in told if hint is not None and hint.name == "any-tank-anywhere"), None)
    return _there(elsewhere, "a tank that the growth does not come to")


def _tankless(asked: AskedHeater) -> Hint:
    pump = asked.pump if asked.heater.on_flow else None
    return asked.says("tankless-never", pump=_there(pump, "a tankless heater in a loop that a pump drives"))


def _pump(asked: AskedHeater) -> Hint:
    pump = _there(asked.pump, "a pump that drives the heater's water round")
    return asked.says("pump-raises-pressure", pump=pump, outlet=_first(asked).outlet)


def _leak(asked: AskedHeater) -> Hint:
    lacking = "a check that leaks, and a device that stops the water all the same"
    return asked.says("leaking-check-is-open", leak=_there(asked.leak, lacking), device=_there(asked.stop, lacking))


def _somebody(asked: AskedHeater) -> Hint:
    if asked.heater.verdict is Verdict.ON_DEMAND:
        raise NotShown("a heater that heats up with every fixture shut")
    return asked.says("somebody-opens-a-tap")


def _high(asked: AskedHeater) -> Hint:
    _there(asked.heater.static_pa, "a pressure that stands with nothing heated")
    return asked.says("high-is-trapped")


_TOLD: Mapping[str, Callable[[AskedHeater], Hint]] = {
    "relief-takes-care": _relief,
    "reducer-caps-pressure": _reducer,
    "bypass-needs-no-tank": _bypass,
    "meter-is-no-valve": _meter,
    "any-tank-anywhere": _any_tank,
    "size-beats-charge": lambda asked: asked.says("size-beats-charge"),
    "few-degrees-do-not-matter": lambda asked: asked.says("few-degrees-do-not-matter"),
    "bigger-heater-higher-pressure": _bigger,
    "tankless-never": _tankless,
    "pump-raises-pressure": _pump,
    "leaking-check-is-open": _leak,
    "somebody-opens-a-tap": _somebody,
    "high-is-trapped": _high,
}
