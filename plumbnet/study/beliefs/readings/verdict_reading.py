"""What stands behind a verdict that is not the right one."""

from plumbnet.rules.facts import Verdict
from plumbnet.study.beliefs.hint import BlankHints
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.beliefs.verdict_beliefs import verdict_belief
from plumbnet.study.exercise import Exercise


@reading("verdict")
def verdict_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is the word of a verdict."""
    asked = heater_asked(exercise)
    return (option_hints(exercise, lambda option: verdict_belief(asked, Verdict(option))),)
