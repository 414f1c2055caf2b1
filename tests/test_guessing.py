"""The measure of what exercises give away sees what is given away, and on twins finds nothing."""

from collections.abc import Sequence
from dataclasses import replace

from guessing import blind, commonest, forest

from plumbnet.study.exercise.exercise import Exercise
from plumbnet.study.exercise.generator import exercises

TREES = 25
DEALT = exercises(1, 1, 24, about="verdict")


def telling(dealt: Sequence[Exercise]) -> list[Exercise]:
    """Exercises whose supposition tells the answer."""
    return [replace(one, supposed=f"{one.asked.answer} is meant") for one in dealt]


def test_answer_that_the_list_tells_is_guessed() -> None:
    assert forest(telling(DEALT), TREES) > 0.9


def test_twins_are_guessed_no_better_than_blindly() -> None:
    assert blind(DEALT) == commonest(DEALT) == 0.5
    assert forest(DEALT, TREES) < 0.75
