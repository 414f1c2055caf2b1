from pathlib import Path

import pytest
from conftest import layout

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.training.question_file import questions_at

RELIEF = "relief: {pressure: 150 psi}"
HOUSE = layout("street -> meter -> valve -> heater -> tap.hot", heater=RELIEF) + (
    "scenarios: {shut: {note: The stop is shut., change: [{close: valve}]}}\n"
)
ONE = """plumbnet-questions: 1
title: Week three
questions:
  - layout: house.yaml
    scenario: shut
    about: verdict
    heater: heater
    prompt: Where does it go?
    options: {open: back to the street, trapped: nowhere at all}
  - {layout: house.yaml, about: stopper}
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "house.yaml").write_text(HOUSE, encoding="utf-8")
    return tmp_path


def written(folder: Path, text: str) -> str:
    file = folder / "week.yaml"
    file.write_text(text, encoding="utf-8")
    return str(file)


def test_question_is_put_in_the_words_of_its_author_and_answered_by_the_engine(folder: Path) -> None:
    own = questions_at(written(folder, ONE))
    first, second = (one.worded for one in own.posed)
    blank = first.asked.blanks[0]
    assert isinstance(blank, Choice)
    assert (blank.options, blank.right) == (("back to the street", "nowhere at all"), "nowhere at all")
    assert (first.asked.prompt, first.supposed) == ("Where does it go?", "The stop is shut")
    assert first.origin.in_words == "Week three, question 1."
    assert own.posed[0].could_hold == ("shut-valve-passed-over",)
    assert (second.asked.blanks[0].answer("us"), second.supposed) == ("nothing", "")


FAULTS = [
    ("about: verdict", "about: verdikt", '6:12: there is no question "verdikt": did you mean "verdict"?'),
    ("scenario: shut", "scenario: shot", '5:15: "house.yaml" has no scenario "shot": did you mean "shut"?'),
    ("heater: heater", "heater: hearer", '7:13: "house.yaml" has no heater "hearer": did you mean "heater"?'),
    ("{open:", "{opem:", '9:15: "opem" is no answer to this question: did you mean "open"?'),
    (", trapped: nowhere at all", ", sealed: here", "9:5: the right answer is not among the options; it is trapped"),
    ("nowhere at all", "back to the street", "9:5: two options have the same words; give each its own"),
    (", trapped: nowhere at all", "", "options: "),
    ("layout: house.yaml\n    s", "layout: barn.yaml\n    s", '4:13: "barn.yaml" cannot be read: no such file'),
    ("about: stopper", "about: tank", '10:33: the question "tank" has no one answer on "house.yaml"; it can be asked'),
    ("layout: house.yaml\n    s", 'layout: "a\\0b"\n    s', "4:13: "),
    ("about: stopper", "abut: stopper", '10:26: a question has no field "abut": did you mean "about"?'),
    ("plumbnet-questions: 1", "plumbnet-questions: 9", "1:21: plumbnet-questions: write 1, not 9"),
]


@pytest.mark.parametrize(("before", "after", "told"), FAULTS)
def test_mistake_is_told_at_its_place_in_a_calm_sentence(folder: Path, before: str, after: str, told: str) -> None:
    assert ONE.count(before) == 1
    with pytest.raises(LayoutError) as error:
        questions_at(written(folder, ONE.replace(before, after)))
    assert told in str(error.value)


def test_all_mistakes_are_told_at_once_and_those_of_a_layout_below(folder: Path) -> None:
    (folder / "house.yaml").write_text(HOUSE.replace("kind: valve", "kind: vlave"), encoding="utf-8")
    with pytest.raises(LayoutError) as error:
        questions_at(written(folder, ONE))
    told = str(error.value)
    assert told.count('there are mistakes in "house.yaml"; plumbnet check shows them') == 2
    assert 'did you mean "valve"?' in told


def test_list_is_no_file_of_questions(folder: Path) -> None:
    with pytest.raises(LayoutError, match="a file of questions is a mapping; begin it with plumbnet-questions: 1"):
        questions_at(written(folder, "- 1\n"))
