from dataclasses import replace

from sketching import chance

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.family import Family
from plumbnet.study.exercise.question import QUESTIONS
from plumbnet.study.exercise.suppositions import suppositions
from plumbnet.study.exercise.usual_sizes import USUAL


def family(name: str, level: int, seed: int, **shares: float) -> Family:
    question = QUESTIONS[name]
    recipe = question.recipe(level) if not shares else replace(question.recipe(level), **shares)
    return Family(building(recipe, chance(seed), USUAL["us"]), None, question, level, chance(seed))


def test_one_list_has_layouts_of_every_answer() -> None:
    answers = next(found for seed in range(9) if (found := family("verdict", 2, seed).answers()) is not None)
    assert set(answers) == {"open", "controlled", "trapped"}
    systems = [read_system(twins[0].layout.encode(), file="twin.yaml") for twins in answers.values()]
    assert len({tuple(system.written) for system in systems}) == 1
    assert len({twins[0].asked.heater for twins in answers.values()}) == 1
    assert all(twin.asked.answer == answer for answer, twins in answers.items() for twin in twins)


def test_list_without_the_makings_is_given_up() -> None:
    assert family("verdict", 2, 1, tank=0.0, spill=0.0).answers() is None


def test_what_is_supposed_is_made_before_the_question_is_put() -> None:
    whole = family("verdict", 1, 2, heater_valve=1.0, tap_valve=1.0)
    system = read_system(whole.stock.text(whole.stock.stretches).encode(), file="drawn.yaml")
    shut = next(one for one in suppositions(system) if "left shut" in one.words)
    answers = Family(whole.stock, shut, whole.question, 1, chance(2)).answers()
    assert answers is not None
    twins = {
        answer: [read_system(one.layout.encode(), file="twin.yaml") for one in found]
        for answer, found in answers.items()
    }
    for answer, systems in twins.items():
        assert {verdict(with_changes(one, shut.changes)) for one in systems} == {answer}
    assert "open" in {verdict(one) for one in twins["trapped"]}


def verdict(system: System) -> str:
    (heater,) = plumbnet.check(system).heaters
    return heater.verdict.value
