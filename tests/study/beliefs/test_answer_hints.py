import re

import pytest

from plumbnet.study.beliefs.answer_hints import exercise_hints
from plumbnet.study.beliefs.hint import ChoiceHints, Hint, MeasureHints
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.exercise import Exercise
from plumbnet.study.exercise.generator import exercises

DEALT = [one for level, count in ((2, 4), (5, 2)) for one in exercises(11, level, count)]


def all_hints(exercise: Exercise) -> list[Hint]:
    found: list[Hint] = []
    for one in exercise_hints(exercise):
        match one:
            case ChoiceHints():
                found += one.options.values()
            case MeasureHints():
                found += [one.less, one.more, *(hint for _, hint in one.causes)]
    return found


@pytest.mark.parametrize("exercise", DEALT, ids=lambda one: f"{one.origin.name}-{one.question.name}")
def test_every_answer_to_a_dealt_exercise_is_met_with_two_whole_sentences(exercise: Exercise) -> None:
    for hint in all_hints(exercise):
        assert re.fullmatch(r"You .+; .+\. Look .+[.?]( It is a danger to life\.)?", hint.text), hint.text
        assert not re.search(r"[{}]", hint.text)
    hints = exercise_hints(exercise)
    for blank, one in zip(exercise.asked.blanks, hints, strict=False):
        if isinstance(blank, Choice):
            assert isinstance(one, ChoiceHints)
            assert one.options.keys() == set(blank.options) - {blank.right}
    asked_for = [one for one in exercise.asked.blanks if not (isinstance(one, Measure) and one.right is None)]
    assert len(hints) == len(asked_for)


def test_right_number_is_the_number_of_no_cause() -> None:
    for exercise in DEALT:
        for one in exercise_hints(exercise):
            if isinstance(one, MeasureHints):
                assert all(abs(cause - one.right) > one.tolerance for cause, _ in one.causes)
