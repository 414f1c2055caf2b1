"""What stands behind a device that was taken for the one that stops the water."""

from plumbnet.study.beliefs.device_beliefs import past_the_stop, stopped_at
from plumbnet.study.beliefs.hint import BlankHints, Hint
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.exercise import Exercise


@reading("stopper")
def stopper_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is the name of a part, or that nothing stops it."""
    asked = heater_asked(exercise)

    def read(option: str) -> Hint:
        return stopped_at(asked, option) if option in asked.parts else past_the_stop(asked)

    return (option_hints(exercise, read),)
