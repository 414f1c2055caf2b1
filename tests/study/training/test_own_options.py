"""Options of a trainer's own, and the beliefs that are tied to them."""

from pathlib import Path

import pytest
from conftest import layout

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.beliefs.hint import ChoiceHints
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.training.class_table import class_rows
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.question_file import questions_at
from plumbnet.study.training.results_file import AnswerGiven, Results, Sitting, TryGiven

HOUSE = layout("street -> meter -> heater -> tap.hot", meter="check: true", heater="relief: {pressure: 150 psi}")
ONE = """plumbnet-questions: 1
questions:
  - layout: house.yaml
    about: verdict
    options:
      trapped: nowhere
      open: {words: back to the street, says: Ask what is in the meter.}
      controlled: {words: into the relief valve, held: relief-takes-care}
      tap: {words: out of a tap, held: somebody-opens-a-tap}
      pump: {words: round and round, held: pump-raises-pressure, says: There is no pump here.}
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "house.yaml").write_text(HOUSE, encoding="utf-8")
    return tmp_path


def asked(folder: Path, text: str = ONE) -> PosedExercise:
    file = folder / "week.yaml"
    file.write_text(text, encoding="utf-8")
    (one,) = questions_at(str(file)).posed
    return one


def test_option_tied_to_a_belief_is_offered_and_met_with_it(folder: Path) -> None:
    one = asked(folder)
    blank = one.worded.asked.blanks[0]
    assert isinstance(blank, Choice)
    assert blank.options == (
        "nowhere",
        "back to the street",
        "into the relief valve",
        "out of a tap",
        "round and round",
    )
    (hints,) = one.hints
    assert isinstance(hints, ChoiceHints)
    assert {words: hint.name for words, hint in hints.options.items()} == {
        "back to the street": "meter-is-no-valve",
        "into the relief valve": "relief-takes-care",
        "out of a tap": "somebody-opens-a-tap",
        "round and round": "pump-raises-pressure",
    }
    said = {words: hint.text for words, hint in hints.options.items()}
    assert said["back to the street"] == "Ask what is in the meter."
    assert said["into the relief valve"].startswith("You left the growth to heater/relief, which opens at 150 psi; ")
    assert said["out of a tap"].startswith("You waited for somebody to draw water; ")
    assert said["round and round"] == "There is no pump here."
    assert one.exercise.origin.level.number == 1  # what is tied asks for no level


def test_class_is_counted_by_the_belief_that_was_chosen(folder: Path) -> None:
    one = asked(folder)
    tried = (TryGiven(given="out of a tap", held="somebody-opens-a-tap"), TryGiven(given="nowhere"))
    answer = AnswerGiven(exercise=1, blank=1, question="verdict", right="nowhere", tries=tried, could=one.could_hold)
    ada = Results(sittings=(Sitting(day="2026-03-14", answers=(answer,)),))
    (row,) = class_rows({"Ada": ada})
    assert (row.name, row.held_by, row.holdings[0].put_right) == ("somebody-opens-a-tap", ("Ada",), 1)
    assert set(one.could_hold) >= {"pump-raises-pressure", "relief-takes-care", "meter-is-no-valve"}


FAULTS = [
    ("held: somebody", "held: somebodi", '9:40: there is no belief "somebodi-opens-a-tap": did you mean "somebody-o'),
    ("tap, held: somebody-opens-a-tap", "tap", '9:7: "tap" is no answer to this question: '),
    ("tap: {words", "tap: {wrods", '9:13: an option has no field "wrods": did you mean "words"?'),
    ("trapped: nowhere", "trapped: {words: x, held: high-is-trapped}", '6:27: "trapped" is the right answer, and '),
    ("trapped: nowhere", "trapped: {words: x, says: No.}", '6:27: "trapped" is the right answer, and '),
    (
        ", says: There is no pump here.",
        "",
        '10:44: "pump-raises-pressure" is told of a pump that drives the heater\'s water round, and "house.yaml" ',
    ),
    ("out of a tap", "nowhere", "5:5: two options have the same words; give each its own"),
]


@pytest.mark.parametrize(("before", "after", "told"), FAULTS)
def test_mistake_is_told_at_its_place_in_a_calm_sentence(folder: Path, before: str, after: str, told: str) -> None:
    assert ONE.count(before) == 1
    with pytest.raises(LayoutError) as error:
        asked(folder, ONE.replace(before, after))
    assert told in str(error.value)
