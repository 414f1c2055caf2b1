from datetime import date, timedelta

from plumbnet.study.training.repetition import Due, asked_again, due_on, next_day
from plumbnet.study.training.results_file import AnswerGiven, Dealt, Held, Results, Sitting, TryGiven, with_answer

MISSED = date(2026, 3, 1)
WHAT = Held(question="stopper", held="check-passed-over")
HELD, RIGHT = TryGiven(given="nothing", held=WHAT.held), TryGiven(given="cv")


def on(day: int) -> date:
    """So many days after the miss."""
    return MISSED + timedelta(days=day)


def answered(results: Results, day: int, *tries: TryGiven, again: bool) -> Results:
    sitting = Sitting(day=on(day).isoformat(), dealt=None if again else Dealt(), level=2)
    one = AnswerGiven(exercise=1, blank=1, question="stopper", right="cv", tries=tries, again=WHAT if again else None)
    return with_answer(results, sitting, one)


ONCE = answered(Results(), 0, HELD, RIGHT, again=False)


def test_what_was_missed_is_due_after_one_four_and_ten_days() -> None:
    results, days = ONCE, list[int]()
    for _ in range(3):
        following = next_day(results)
        assert following is not None
        days.append((following - MISSED).days)
        assert due_on(results, following - timedelta(days=1)) == ()
        (due,) = due_on(results, following)
        assert due.what == WHAT
        results = answered(results, days[-1], RIGHT, again=True)
    assert days == [1, 4, 10]
    assert next_day(results) is None


def test_who_comes_late_is_asked_the_next_time_as_much_later() -> None:
    late = answered(ONCE, 6, RIGHT, again=True)
    assert next_day(late) == on(6 + 3)


def test_missed_again_begins_anew_in_another_house() -> None:
    again = answered(answered(ONCE, 1, RIGHT, again=True), 4, HELD, RIGHT, again=True)
    assert next_day(again) == on(5)
    (due,) = due_on(again, on(5))
    assert (due.asked, due.turns, due.missed) == (0, 2, on(4))


def test_right_at_once_is_never_due() -> None:
    assert next_day(answered(Results(), 0, RIGHT, again=False)) is None


def test_each_turn_has_a_house_of_its_own_and_the_same_belief_to_hold() -> None:
    first = Due(Held(question="verdict", held="way-out-overlooked"), 1, "us", MISSED, MISSED)
    second = Due(first.what, 1, "us", MISSED, on(1), asked=1, turns=1)
    houses = [asked_again(one, seed=1) for one in (first, first, second)]
    assert houses[0].exercise.text == houses[1].exercise.text != houses[2].exercise.text
    for one in houses:
        assert one.again == first.what
        assert one.exercise.question.name == "verdict"
        assert "way-out-overlooked" in one.could_hold
