from conftest import system
from sketching import chance

import plumbnet
from plumbnet.study.exercise import generator as dealing
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, Asked, World, heaters, reducer_note

RUNS = "street -> heater -> tap.hot"


def test_every_sort_of_question_says_what_it_asks() -> None:
    for question in QUESTIONS.values():
        assert question.about.endswith("?"), question.name


def test_every_level_has_questions_and_every_question_has_a_level() -> None:
    assert all(len(dealing.questions_of(level)) >= 3 for level in LEVELS)
    assert all(set(question.outcomes) <= set(LEVELS) and question.outcomes for question in QUESTIONS.values())


def test_every_level_of_a_question_says_how_many_answers_its_lists_must_have() -> None:
    for question in QUESTIONS.values():
        assert set(question.fewest) == set(question.outcomes), question.name
        assert all(fewest >= 2 for fewest in question.fewest.values()), question.name


def test_leans_of_a_level_go_before_those_of_all() -> None:
    stopper = QUESTIONS["stopper"]
    assert (stopper.recipe(1).second_meter, stopper.recipe(2).second_meter) == (0.0, stopper.leans[0]["second_meter"])
    assert all(set(question.leans) <= {0, *question.outcomes} for question in QUESTIONS.values())


def test_narrowed_question_offers_what_is_named_in_its_own_order() -> None:
    asked = Asked("Which?", (Choice("It is", ("a", "b", "c"), "b"),), "b", ())
    assert asked.narrowed({"c", "b"}).choice.options == ("b", "c")
    assert asked.narrowed({"c", "b"}).answer == "b"


def test_convention_on_reducers_stands_where_there_is_one() -> None:
    plain, reduced = (
        World(plumbnet.check(system(runs)), 2, chance(1)) for runs in (RUNS, RUNS.replace("-> h", "-> prv -> h"))
    )
    assert reducer_note(plain) == ""
    assert "without a bypass" in reducer_note(reduced)


def test_dry_heater_is_not_asked_about() -> None:
    dry = system("street -> heater -> tap.hot\nheater2 -> tap2.hot")
    world = World(plumbnet.check(dry), 4, chance(1))
    assert [one.name for one in world.report.heaters] == ["heater", "heater2"]
    assert [one.name for one in heaters(world)] == ["heater"]
