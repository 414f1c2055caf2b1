import re
from collections import Counter

import pytest
from answering import CHECKS, task
from sketching import chance

from plumbnet.analysis.report import Report
from plumbnet.layout.model.change import Change
from plumbnet.layout.units.units import Customary
from plumbnet.rules.finding import Severity
from plumbnet.study.exercise import generator as dealing
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.exercise import SCENARIO, Exercise
from plumbnet.study.exercise.generator import NoMore, exercises, questions_of
from plumbnet.study.exercise.layout_likeness import likeness
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS
from plumbnet.study.exercise.usual_sizes import USUAL

NUMBERS = sorted(LEVELS)
SEEDS = 100
MEANT = {"trapped-expansion", "sealed-heater", "relief-missing", "static-above-limit"}
"""Errors that layouts have on purpose, beside those of tanks; another would be a trap that nobody set."""


def errors(report: Report) -> set[str]:
    return {one.name for one in report.findings if one.severity is Severity.ERROR}


@pytest.mark.parametrize("level", NUMBERS)
def test_every_key_is_what_the_engine_says_of_the_written_file(level: int) -> None:
    """A hundred seeds a level, five hundred in all."""
    outcomes: dict[str, Counter[str]] = {}
    for seed in range(SEEDS):
        (exercise,) = exercises(seed, level)
        CHECKS[exercise.question.name](task(exercise))
        choice = exercise.asked.blanks[0]
        assert isinstance(choice, Choice)
        assert len(set(choice.options)) == len(choice.options)
        assert {name for name in errors(exercise.drawn) if not name.startswith("tank-")} <= MEANT
        outcomes.setdefault(exercise.question.name, Counter())[exercise.asked.outcome] += 1
    assert set(outcomes) == {question.name for question in questions_of(level)}
    for name, counts in outcomes.items():
        dealt = QUESTIONS[name].outcomes[level]
        fair = counts.total() / len(dealt)
        assert set(counts) == set(dealt), (name, counts)
        assert max(counts.values()) <= 2.5 * fair, (name, counts)


def changes(exercise: Exercise) -> tuple[Change, ...]:
    return exercise.system.scenarios[SCENARIO].change if exercise.supposed else ()


@pytest.mark.parametrize("units", USUAL)
@pytest.mark.parametrize("level", NUMBERS)
def test_no_two_of_a_class_are_the_same_and_answers_are_shared_out_evenly(level: int, units: Customary) -> None:
    for question in questions_of(level):
        dealt = question.outcomes[level]
        found = exercises(5, level, 2 * len(dealt), about=question.name, units=units)
        for one in found:
            CHECKS[question.name](task(one))
            assert one.system.units == units
            assert {name for name in errors(one.drawn) if not name.startswith("tank-")} <= MEANT
        counts = Counter(one.asked.outcome for one in found)
        assert {counts[outcome] for outcome in dealt} == {2}
        keys = {likeness(one.system, changes(one)) for one in found}
        assert len(keys) == len(found)


def test_first_ones_are_the_same_however_many_are_wanted() -> None:
    few, many = exercises(3, 2, 3), exercises(3, 2, 6)
    assert [one.text for one in few] == [one.text for one in many[:3]]
    assert [one.asked for one in few] == [one.asked for one in many[:3]]


def test_another_seed_gives_others() -> None:
    assert exercises(1, 3)[0].text != exercises(2, 3)[0].text


def test_metric_exercise_has_another_name_and_no_american_unit_in_it() -> None:
    names = [exercises(1, 5, units=units)[0].origin.name for units in ("us", "metric")]
    assert names == ["exercise-5-1-1", "exercise-metric-5-1-1"]
    for one in exercises(1, 5, 10, units="metric"):
        answers = [blank.answer(one.report.facts.units) for blank in one.asked.blanks]
        words = f"{one.text} {one.supposed} {one.asked.prompt} {answers} {one.asked.because}"
        assert not {"psi", "gal", "degF", "ft", "Btu/h"} & set(re.findall(r"[\w/]+", words))


def test_it_ends_where_nothing_new_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(dealing, "MOST_TRIES", 3)
    drawn = building(LEVELS[1].recipe, chance(0), USUAL["us"])
    monkeypatch.setattr(dealing, "building", lambda _recipe, _chance, _usual: drawn)
    with pytest.raises(NoMore, match="no exercise of level 1 is left that differs from those before it"):
        exercises(1, 1, 40)
