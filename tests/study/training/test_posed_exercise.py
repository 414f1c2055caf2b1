from posing import RELIEF, posed

from plumbnet.study.beliefs.hint import ChoiceHints
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.training.posed_exercise import PosedExercise, taking_turns

PLAIN = posed("verdict", "street -> cv -> heater -> tap.hot", heater=RELIEF)
OWN = PosedExercise(PLAIN, {"trapped": "nowhere", "open": "back to the street"})


def test_own_words_stand_for_the_options_of_the_sort() -> None:
    blank = OWN.worded.asked.blanks[0]
    assert isinstance(blank, Choice)
    assert (blank.options, blank.right) == (("nowhere", "back to the street"), "nowhere")
    (hints,) = OWN.hints
    assert isinstance(hints, ChoiceHints)
    assert {words: hint.name for words, hint in hints.options.items()} == {"back to the street": "check-passed-over"}
    assert OWN.could_hold == ("check-passed-over",)


def test_without_words_of_its_own_it_is_as_it_was_dealt() -> None:
    one = PosedExercise(PLAIN)
    assert one.worded is PLAIN
    assert set(one.could_hold) >= {"check-passed-over", "relief-takes-care"}


def test_own_and_dealt_ones_take_turns_and_are_numbered_anew() -> None:
    dealt = exercises(1, 1, 3, about="verdict")
    mixed = taking_turns([OWN], dealt)
    assert [one.exercise.origin.number for one in mixed] == [1, 2, 3, 4]
    assert mixed[0].wording
    assert [one.exercise.origin.source.rpartition(". ")[2] for one in mixed[1:]] == [
        "Seed 1, number 1.",
        "Seed 1, number 2.",
        "Seed 1, number 3.",
    ]


def test_dealt_ones_alone_stay_as_they_are() -> None:
    dealt = exercises(1, 1, 2, about="verdict")
    assert [one.exercise for one in taking_turns([], dealt)] == list(dealt)
