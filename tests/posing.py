"""An exercise of one sort about a layout drawn in a line or two, and what is said of an answer to it."""

from conftest import system
from sketching import chance

import plumbnet
from plumbnet.study.beliefs.answer_hints import exercise_hints
from plumbnet.study.beliefs.hint import ChoiceHints, Hint, MeasureHints
from plumbnet.study.exercise.exercise import Exercise, Origin
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, World

PSI = 6894.757293168361
RELIEF = "relief: {pressure: 150 psi}"


def posed(name: str, runs: str, level: int = 0, **parts: str) -> Exercise:
    """The first that the question asks of the layout, as an exercise."""
    question = QUESTIONS[name]
    level = level or max(question.outcomes)
    report = plumbnet.check(system(runs, **parts))
    asked = min(question.ask(World(report, level, chance(1))), key=lambda one: one.heater or "")
    return Exercise(Origin(0, LEVELS[level], 1, "us"), "", report, "", report, question, asked)


def said(exercise: Exercise, option: str) -> Hint:
    """What is said of an option."""
    hints = exercise_hints(exercise)[0]
    assert isinstance(hints, ChoiceHints)
    return hints.options[option]


def said_of_number(exercise: Exercise, psi: float) -> Hint:
    """What is said of a pressure, in psi."""
    hints = exercise_hints(exercise)[1]
    assert isinstance(hints, MeasureHints)
    return hints.of(psi * PSI)
