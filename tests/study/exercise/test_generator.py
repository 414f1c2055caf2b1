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
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.exercise import SCENARIO, Exercise
from plumbnet.study.exercise.family import MEANT
from plumbnet.study.exercise.generator import NoMore, exercises, questions_of
from plumbnet.study.exercise.layout_likeness import likeness
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS
from plumbnet.study.exercise.usual_sizes import USUAL

SORTS = [(level, question.name) for level in LEVELS for question in questions_of(level)]
UNITS: tuple[Customary, ...] = ("us", "metric")


def errors(report: Report) -> set[str]:
    return {one.name for one in report.findings if one.severity is Severity.ERROR}


@pytest.mark.parametrize("number", range(len(SORTS)), ids=[f"{level}-{name}" for level, name in SORTS])
def test_key_is_what_another_way_finds_in_the_written_file(number: int) -> None:
    """One of each sort and level; `exercise_measure.py` deals thousands."""
    (level, name), units = SORTS[number], UNITS[number % 2]
    (exercise,) = exercises(number + 1, level, about=name, units=units)
    CHECKS[name](task(exercise))
    assert exercise.system.units == units
    assert errors(exercise.drawn) <= MEANT
    assert exercise.asked.outcome in QUESTIONS[name].outcomes[level]
    options = exercise.asked.choice.options
    assert len(set(options)) == len(options) >= QUESTIONS[name].fewest[level]
    assert exercise.asked.answer in options


def changes(exercise: Exercise) -> tuple[Change, ...]:
    return exercise.system.scenarios[SCENARIO].change if exercise.supposed else ()


@pytest.mark.parametrize(("level", "name"), [(1, "verdict"), (2, "verdict"), (1, "opens-first")])
def test_no_two_of_a_class_are_the_same_and_answers_are_shared_out_evenly(level: int, name: str) -> None:
    question = QUESTIONS[name]
    found = exercises(5, level, 2 * question.fewest[level], about=name)
    assert Counter(one.asked.outcome for one in found) == dict.fromkeys(question.outcomes[level], 2)
    assert len({likeness(one.system, changes(one)) for one in found}) == len(found)


def test_first_ones_are_the_same_however_many_are_wanted() -> None:
    few, many = exercises(3, 1, 2), exercises(3, 1, 4)
    assert [one.text for one in few] == [one.text for one in many[:2]]
    assert [one.asked for one in few] == [one.asked for one in many[:2]]


def test_another_seed_gives_others() -> None:
    assert exercises(1, 1)[0].text != exercises(2, 1)[0].text


def test_metric_exercise_has_another_name_and_no_american_unit_in_it() -> None:
    (american,), (metric,) = (exercises(1, 2, about="tank", units=units) for units in UNITS)
    assert (american.origin.name, metric.origin.name) == ("exercise-2-1-1", "exercise-metric-2-1-1")
    answers = [blank.answer(metric.report.facts.units) for blank in metric.asked.blanks]
    words = f"{metric.text} {metric.supposed} {metric.asked.prompt} {answers} {metric.asked.because}"
    assert not {"psi", "gal", "degF", "ft", "Btu/h"} & set(re.findall(r"[\w/]+", words))


def test_it_ends_where_nothing_new_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(dealing, "MOST_TRIES", 1)
    drawn = building(QUESTIONS["verdict"].recipe(1), chance(4), USUAL["us"])
    monkeypatch.setattr(dealing, "building", lambda _recipe, _chance, _usual: drawn)
    with pytest.raises(NoMore, match="no exercise of level 1 is left that differs from those before it"):
        exercises(1, 1, 200, about="verdict")
