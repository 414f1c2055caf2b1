from conftest import layout

import plumbnet
from plumbnet.layout.model.change import Change
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.exercise import Origin, exercise
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, Asked
from plumbnet.study.exercise.suppositions import Supposition

HOUSE = layout("street -> valve -> heater -> tap.hot")
ORIGIN = Origin(7, LEVELS[2], 3, "us")
ASKED = Asked("What becomes of it?", (Choice("heater is", ("open", "trapped"), "trapped"),), "trapped", ())
SHUT = Supposition("valve is left shut", (Change.model_validate({"close": "valve"}),))


def test_supposition_stands_in_the_file_as_a_scenario_and_is_made() -> None:
    made = exercise(ORIGIN, HOUSE, SHUT, QUESTIONS["verdict"], ASKED)
    assert made.supposed == made.system.scenarios["what-if"].note == "valve is left shut"
    assert made.report.scenario == "what-if"
    assert [heater.verdict.value for heater in made.report.heaters] == ["sealed"]
    assert [heater.verdict.value for heater in plumbnet.check(made.system).heaters] == ["open"]


def test_layout_of_which_nothing_is_supposed_is_left_alone() -> None:
    made = exercise(ORIGIN, HOUSE, None, QUESTIONS["verdict"], ASKED)
    assert (made.text, made.supposed, made.report.scenario) == (HOUSE, "", None)


def test_exercise_is_named_by_level_seed_and_number() -> None:
    made = exercise(ORIGIN, HOUSE, None, QUESTIONS["verdict"], ASKED)
    assert made.system.record.file == "exercise-2-7-3.yaml"
