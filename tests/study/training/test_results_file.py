from pathlib import Path

import pytest

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.training.results_file import (
    AnswerGiven,
    Dealt,
    Held,
    Results,
    Sitting,
    TryGiven,
    read_results,
    results_at,
    results_text,
    with_answer,
)

DAY = Sitting(day="2026-03-14", dealt=Dealt(seed=2, level=3, about="verdict"), level=3)
MISSED = AnswerGiven(
    exercise=1,
    blank=1,
    question="verdict",
    right="trapped",
    tries=(TryGiven(given="open", held="meter-is-no-valve"), TryGiven(given="trapped")),
    hops=2,
    could=("meter-is-no-valve",),
    again=Held(question="verdict", held="meter-is-no-valve"),
)
RIGHT = AnswerGiven(exercise=2, blank=1, question="stopper", right="stop", tries=(TryGiven(given="stop"),))
BOTH = with_answer(with_answer(Results(name="Ada \x1b[2J"), DAY, MISSED), DAY, RIGHT)


def test_what_is_written_is_read_as_it_was() -> None:
    assert read_results(results_text(BOTH).encode(), file="ada.yaml") == BOTH
    assert "\x1b" not in results_text(BOTH)


def test_file_says_what_it_is_and_in_which_version() -> None:
    first, second, *_ = results_text(BOTH).splitlines()
    assert first.startswith("# What was answered")
    assert second == "plumbnet-results: 1"


def test_answers_of_one_deal_and_day_are_one_sitting() -> None:
    (sitting,) = BOTH.sittings
    assert sitting.answers == (MISSED, RIGHT)
    later = with_answer(BOTH, DAY.model_copy(update={"day": "2026-03-15"}), RIGHT)
    assert [one.day for one in later.sittings] == ["2026-03-14", "2026-03-15"]
    assert [answer for _, answer in later.answers] == [MISSED, RIGHT, RIGHT]


def test_answer_knows_how_it_went() -> None:
    assert (MISSED.is_right_at_once, MISSED.is_right, MISSED.is_done) == (False, True, True)
    assert (RIGHT.is_right_at_once, RIGHT.first_held) == (True, "")
    left = MISSED.model_copy(update={"tries": MISSED.tries[:1]})
    assert (left.is_done, left.first_held) == (False, "meter-is-no-valve")
    nothing = MISSED.model_copy(update={"tries": ()})
    assert (nothing.is_done, nothing.is_right, nothing.first_held) == (True, False, "")


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        ("day: '2026-03-14'", "day: '2026-33-14'", '5:8: day: "2026-33-14" is no date; write it like 2026-03-14'),
        ("hops: 2", "hobs: 2", '20:5: an answer has no field "hobs": did you mean "hops"?'),
        ("plumbnet-results: 1", "plumbnet: 1", 'a results file has the key "plumbnet-results" at its top; plumbnet'),
        ("plumbnet-results: 1", "plumbnet-results: 2", "2:19: plumbnet-results: write 1, not 2"),
    ],
)
def test_mistake_is_told_at_its_place(before: str, after: str, told: str) -> None:
    text = results_text(BOTH)
    assert before in text
    with pytest.raises(LayoutError) as error:
        read_results(text.replace(before, after).encode(), file="ada.yaml")
    assert told in str(error.value)


def test_file_is_read_from_where_it_lies(tmp_path: Path) -> None:
    file = tmp_path / "ada.yaml"
    file.write_text(results_text(BOTH), encoding="utf-8")
    assert results_at(str(file)) == BOTH


def test_blank_that_was_left_after_a_try_is_gone_on_with_on_another_day() -> None:
    first, second = (MISSED.model_copy(update={"tries": MISSED.tries[at : at + 1]}) for at in (0, 1))
    later = DAY.model_copy(update={"day": "2026-03-15"})
    (sitting,) = with_answer(with_answer(Results(), DAY, first), later, second).sittings
    (answer,) = sitting.answers
    assert (sitting.day, answer.tries, answer.hops) == ("2026-03-14", MISSED.tries, 4)
    other = second.model_copy(update={"exercise": 2})
    assert len(with_answer(with_answer(Results(), DAY, first), later, other).sittings) == 2
