"""An exercise to what is said of every answer that is not the right one."""

from plumbnet.discover import discover
from plumbnet.study.beliefs import readings
from plumbnet.study.beliefs.hint import BlankHints
from plumbnet.study.beliefs.reading import READINGS
from plumbnet.study.exercise import Exercise

discover(readings)


def exercise_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """The hints for each blank, in their order; shorter where the last blanks are to stay empty."""
    return READINGS[exercise.question.name](exercise)
