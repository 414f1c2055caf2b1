import json

from plumbnet.layout.file.loader import read_system
from plumbnet.report.studies.exercise_data import exercises_json
from plumbnet.study.beliefs.answer_hints import exercise_hints
from plumbnet.study.exercise.answer import Measure
from plumbnet.study.exercise.generator import exercises


def test_document_has_all_that_is_needed_to_put_the_question_and_to_judge_an_answer() -> None:
    (one,) = exercises(2, 1, about="opens-first")
    (told,) = json.loads(exercises_json([(one, exercise_hints(one))]))["exercises"]
    outlet, pressure = told["blanks"]
    assert (told["name"], told["seed"], told["level"], told["number"], told["units"]) == (
        "exercise-1-2-1",
        2,
        1,
        1,
        "us",
    )
    assert (told["about"], told["heater"], told["question"]) == ("opens-first", "heater", one.asked.prompt)
    assert (outlet["options"], outlet["key"]) == (list(one.asked.choice.options), one.asked.answer)
    measure = one.asked.blanks[1]
    assert isinstance(measure, Measure)
    assert (pressure["quantity"], pressure["key_si"]) == ("pressure", measure.right)


def test_behind_every_option_that_is_not_the_right_one_stands_a_belief_or_a_misreading() -> None:
    (one,) = exercises(2, 1, about="opens-first")
    outlet, pressure = json.loads(exercises_json([(one, exercise_hints(one))]))["exercises"][0]["blanks"]
    assert {*outlet["beliefs"], outlet["key"]} == set(outlet["options"])
    for told in (*outlet["beliefs"].values(), *pressure["causes"], pressure["less"], pressure["more"]):
        assert told["name"]
        assert told["text"].endswith((".", "?"))
        assert told["is_belief"] in {True, False}
    assert all(cause["value_si"] != pressure["key_si"] for cause in pressure["causes"])


def test_layout_in_it_can_be_read_with_what_is_supposed() -> None:
    one = next(one for one in exercises(4, 1, 8, about="verdict") if one.supposed)
    (told,) = json.loads(exercises_json([(one, exercise_hints(one))]))["exercises"]
    system = read_system(told["layout"].encode(), file=told["name"])
    assert system.scenarios["what-if"].note == told["supposed"] != ""
