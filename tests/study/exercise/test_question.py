from conftest import system
from sketching import chance

import plumbnet
from plumbnet.study.exercise import generator as dealing
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, World, heaters


def test_every_sort_of_question_says_what_it_asks() -> None:
    for question in QUESTIONS.values():
        assert question.about.endswith("?"), question.name


def test_every_level_has_questions_and_every_question_has_a_level() -> None:
    assert all(len(dealing.questions_of(level)) >= 3 for level in LEVELS)
    assert all(set(question.outcomes) <= set(LEVELS) and question.outcomes for question in QUESTIONS.values())


def test_leans_lead_to_outcomes_that_are_dealt() -> None:
    for question in QUESTIONS.values():
        dealt = {outcome for outcomes in question.outcomes.values() for outcome in outcomes}
        assert set(question.leans) <= dealt, question.name


def test_dry_heater_is_not_asked_about() -> None:
    dry = system("street -> heater -> tap.hot\nheater2 -> tap2.hot")
    world = World(plumbnet.check(dry), 4, chance(1))
    assert [one.name for one in world.report.heaters] == ["heater", "heater2"]
    assert [one.name for one in heaters(world)] == ["heater"]
