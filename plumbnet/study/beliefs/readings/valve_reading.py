"""What stands behind a valve that was taken for the one that must stay open."""

from plumbnet.rules.facts import RungFacts
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.hint import BlankHints, Hint
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.exercise import Exercise


@reading("locked-valve")
def locked_valve_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is a valve; shut, it leaves the way to some outlet that takes the growth within the limit."""
    asked = heater_asked(exercise)
    takes = [rung for rung in asked.heater.ladder if rung.role.is_control or rung.role.is_way_out]
    within = [rung for rung in takes if rung.opens_pa <= asked.heater.bound_pa] or takes

    def read(valve: str) -> Hint:
        return _shut(asked, valve, next((rung for rung in within if valve not in rung.way), within[0]))

    return (option_hints(exercise, read),)


def _shut(asked: AskedHeater, valve: str, left: RungFacts) -> Hint:
    """Of who shut a valve that leaves a way: before a tap, beside a pump, or anywhere else."""
    if _leads_to_taps(asked, valve):
        return asked.says("somebody-opens-a-tap")
    if asked.pump is not None and any(valve in loop for loop in asked.heater.loops):
        return asked.says_of("pump-raises-pressure", left, pump=asked.pump)
    return asked.says_of("another-way-stays", left, valve=valve)


def _leads_to_taps(asked: AskedHeater, valve: str) -> bool:
    """Whether on one side of a valve there is nothing but fixtures."""
    return any(_are_taps(asked, {valve}, side) for side in sorted(_beside(asked, valve)))


def _beside(asked: AskedHeater, name: str) -> set[str]:
    return {end.part for pipe in asked.report.system.pipes_at(name) for end in pipe.ends} - {name}


def _are_taps(asked: AskedHeater, seen: set[str], name: str) -> bool:
    """Whether all that can be come to from a part, but by those seen, ends in fixtures."""
    part = asked.parts[name]
    if part.draws_at():
        return True
    if part.heat() is not None or part.source() is not None or part.cushion() is not None or any(part.outlets()):
        return False
    seen.add(name)
    further = sorted(_beside(asked, name) - seen)
    return bool(further) and all(_are_taps(asked, seen, one) for one in further if one not in seen)
