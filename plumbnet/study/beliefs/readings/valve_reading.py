"""What stands behind a valve that was taken for the one that must stay open."""

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
        left = next((rung for rung in within if valve not in rung.way), within[0])
        return asked.says_of("another-way-stays", left, valve=valve)

    return (option_hints(exercise, read),)
