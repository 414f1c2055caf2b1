"""The register of how beliefs are read from answers: for each sort of question a function of an exercise."""

from collections.abc import Callable, Mapping

from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.hint import BlankHints, ChoiceHints, Hint
from plumbnet.study.exercise import Choice, Exercise

Reading = Callable[[Exercise], tuple[BlankHints, ...]]
"""An exercise in, hints for each of its blanks out, in their order."""
READINGS: dict[str, Reading] = {}


def reading(question: str) -> Callable[[Reading], Reading]:
    """Register a function as that which reads the answers to a sort of question."""

    def register(read: Reading) -> Reading:
        READINGS[question] = read
        return read

    return register


def heater_asked(exercise: Exercise) -> AskedHeater:
    """The heater that an exercise is about, after what it supposes. Raises KeyError where it is about all."""
    found = {heater.name: heater for heater in exercise.report.heaters}
    return AskedHeater(exercise.report, found[exercise.asked.heater or ""])


def option_hints(exercise: Exercise, read: Callable[[str], Hint]) -> ChoiceHints:
    """What is said of each option of the first blank, save the right one."""
    blank = exercise.asked.blanks[0]
    if not isinstance(blank, Choice):
        raise TypeError("the first blank of this sort of question is a choice")
    hints: Mapping[str, Hint] = {option: read(option) for option in blank.options if option != blank.right}
    return ChoiceHints(hints)
