"""An exercise in talk: what is said and asked, what comes of what is typed, and why."""

from collections.abc import Generator, Iterable

from plumbnet.analysis.water_walk import WaterWalk
from plumbnet.layout.units import Units
from plumbnet.report.worksheets.worksheet_content import key, line_of, worksheet
from plumbnet.report.worksheets.worksheet_text import explanation_text, options_text, task_text
from plumbnet.study.exercise import Blank, Choice, Exercise

PATIENCE = 3
"""Answers that are not understood before the right one is told."""

Talk = Generator[str, str, bool]
"""Yields what is said, ending in a question; takes what is typed; returns whether all of it was right."""


def talk(exercise: Exercise, walks: Iterable[WaterWalk]) -> Talk:
    """The talk about one exercise; a blank that is to stay empty is not asked for.

    The explanation, with the `walks` that belong to it, follows the last answer, and is yielded as what is said before
    one more line is typed.
    """
    units = exercise.report.facts.units
    said = f"{task_text(worksheet(exercise))}\n"
    all_right = True
    for blank in exercise.asked.blanks:
        if isinstance(blank, Choice) or blank.right is not None:
            said, is_right = yield from _asked(said, blank, units)
            all_right &= is_right
    yield f"{said}\n{explanation_text(key(exercise, walks))}\nEnter to go on: "
    return all_right


def _asked(said: str, blank: Blank, units: Units) -> Generator[str, str, tuple[str, bool]]:
    """Ask until it is understood; what is to be said of the answer, and whether it is right."""
    question = options_text(line_of(blank, units))
    for _ in range(PATIENCE):
        typed = yield f"{said}{question}"
        judged = blank.judged(typed, units)
        if judged.taken is not None:
            break
        said = f"That is not understood: {judged.advice}.\n"
    else:
        return f"The answer is {blank.answer(units)}.\n", False
    if judged.is_right:
        return f"Right: {judged.taken}.\n", True
    return f"Not {judged.taken}: the answer is {blank.answer(units)}.\n", False
