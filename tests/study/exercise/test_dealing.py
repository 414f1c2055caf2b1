from collections import Counter

import pytest
from answering import CHECKS, task
from sketching import chance

from plumbnet.rules.finding import Severity
from plumbnet.study.exercise import dealing
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.dealing import NoMore, exercises, questions_of
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS

NUMBERS = sorted(LEVELS)
SEEDS = 100
CLUMSY = {"unreached-part", "pump-drives-nothing", "relief-below-input", "relief-behind-valve", "relief-opens-hot"}


@pytest.mark.parametrize("level", NUMBERS)
def test_every_key_is_what_the_engine_says_of_the_written_file(level: int) -> None:
    """A hundred seeds a level, five hundred in all."""
    outcomes: dict[str, Counter[str]] = {}
    for seed in range(SEEDS):
        (exercise,) = exercises(seed, level)
        CHECKS[exercise.question.name](task(exercise))
        assert CLUMSY.isdisjoint(one.name for one in exercise.report.findings if not exercise.supposed)
        outcomes.setdefault(exercise.question.name, Counter())[exercise.asked.outcome] += 1
    assert set(outcomes) == {question.name for question in questions_of(level)}
    for name, counts in outcomes.items():
        dealt = QUESTIONS[name].outcomes[level]
        fair = counts.total() / len(dealt)
        assert set(counts) == set(dealt), (name, counts)
        assert max(counts.values()) <= 2.5 * fair, (name, counts)


@pytest.mark.parametrize("level", NUMBERS)
def test_no_two_of_a_class_are_the_same_and_answers_are_shared_out_evenly(level: int) -> None:
    for question in questions_of(level):
        dealt = question.outcomes[level]
        found = exercises(5, level, 2 * len(dealt), about=question.name)
        counts = Counter(one.asked.outcome for one in found)
        assert {counts[outcome] for outcome in dealt} == {2}
        assert len({one.text for one in found}) == len(found)


def test_first_ones_are_the_same_however_many_are_wanted() -> None:
    few, many = exercises(3, 2, 3), exercises(3, 2, 6)
    assert [one.text for one in few] == [one.text for one in many[:3]]
    assert [one.asked for one in few] == [one.asked for one in many[:3]]


def test_another_seed_gives_others() -> None:
    assert exercises(1, 3)[0].text != exercises(2, 3)[0].text


def test_right_answer_is_among_the_options_and_names_nothing_twice() -> None:
    for level in NUMBERS:
        for exercise in exercises(11, level, 6):
            choice = exercise.asked.blanks[0]
            assert isinstance(choice, Choice)
            assert choice.right in choice.options
            assert len(set(choice.options)) == len(choice.options)


def test_it_ends_where_nothing_new_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(dealing, "MOST_TRIES", 3)
    drawn = building(LEVELS[1].recipe, chance(0))
    monkeypatch.setattr(dealing, "building", lambda _recipe, _chance: drawn)
    with pytest.raises(NoMore, match="no exercise of level 1 is left that differs from those before it"):
        exercises(1, 1, 40)


def test_layout_as_it_is_has_no_error_but_what_concerns_the_growth() -> None:
    """What else is wrong with a layout would be a trap that nobody set."""
    meant = {"trapped-expansion", "sealed-heater", "relief-missing", "static-above-limit"}
    for level in NUMBERS:
        for exercise in exercises(7, level, 10):
            errors = {one.name for one in exercise.report.findings if one.severity is Severity.ERROR}
            assert {name for name in errors if not name.startswith("tank-")} <= meant
