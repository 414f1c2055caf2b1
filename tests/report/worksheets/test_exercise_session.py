from posing import RELIEF, posed

from plumbnet.report.worksheets.exercise_session import HOP, BlankAnswered, talk
from plumbnet.study.beliefs.answer_hints import exercise_hints
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.exercise import Exercise
from plumbnet.study.exercise.walk_choice import answer_walks

CLOSED = "street -> cv -> heater -> tap.hot"
VERDICT = posed("verdict", "street -> heater -> tap.hot", level=1, heater=RELIEF)
TANK = posed("tank", CLOSED, heater=RELIEF)
NO_TANK = posed("tank", CLOSED, street="pressure: 90 psi", heater=RELIEF)


def played(exercise: Exercise, *typed: str, done: tuple[int, ...] = ()) -> tuple[list[str], list[BlankAnswered]]:
    """What is said, and what was answered; the lines typed end the talk."""
    heard: list[BlankAnswered] = []
    talking = talk(exercise, exercise_hints(exercise), answer_walks(exercise), heard.append, done=done)
    said = [next(talking)]
    try:
        for line in typed:
            said.append(talking.send(line))  # noqa: PERF401  its end is what is wanted
    except StopIteration:
        return said, heard
    raise AssertionError("it still waits for an answer")


def answers(exercise: Exercise) -> list[str]:
    return [blank.answer("us") for blank in exercise.asked.blanks]


def others(exercise: Exercise) -> list[str]:
    """Options that are not the right one."""
    blank = exercise.asked.blanks[0]
    assert isinstance(blank, Choice)
    return [option for option in blank.options if option != blank.right]


def test_right_answer_is_called_right_and_explained() -> None:
    said, (answered,) = played(VERDICT, *answers(VERDICT), "")
    assert [one.hint for one in answered.tries] == [None]
    assert "street (main) > " in said[0]
    assert said[0].endswith("heater is: ")
    assert said[1].startswith(f"Right: {answers(VERDICT)[0]}.\n\n{VERDICT.asked.because[0][:20]}")
    assert said[1].endswith("Enter to go on, ? to follow the water: ")


def test_other_answer_is_met_with_its_belief_and_asked_once_more() -> None:
    (other,) = others(VERDICT)
    said, (answered,) = played(VERDICT, other, *answers(VERDICT), "")
    hint = answered.tries[0].hint
    assert hint is not None
    assert " ".join(said[1].split()).startswith(hint.text)
    assert answers(VERDICT)[0] not in said[1].partition("\n\n")[0]
    assert said[1].endswith("heater is: ")
    assert [one.given for one in answered.tries] == [other, *answers(VERDICT)]
    assert said[2].startswith("Right: ")


def test_after_the_second_try_the_answer_is_told() -> None:
    (other,) = others(VERDICT)
    said, (answered,) = played(VERDICT, other, other, "")
    assert f"\nThe answer is {answers(VERDICT)[0]}.\n" in said[2]
    assert len(answered.tries) == 2
    assert "wrong" not in "".join(said).lower()


def test_water_is_followed_a_hop_at_a_time_and_never_unasked() -> None:
    plain, _ = played(VERDICT, *answers(VERDICT), "")
    assert "it comes to" not in "".join(plain)
    said, (answered,) = played(VERDICT, HOP, HOP, *answers(VERDICT), HOP, "")
    assert answered.hops == 2
    for asked in (said[1], said[2], said[4]):
        assert asked.startswith("From ")
        assert asked.count("it comes to") == 1
    assert said[1].endswith("\nheater is: ")


def test_hops_come_to_an_end() -> None:
    said, _ = played(VERDICT, *[HOP] * 60, *answers(VERDICT), "")
    assert said[60] == "That is all it meets.\nheater is: "


def test_slip_of_the_pen_is_no_other_answer() -> None:
    _, (answered,) = played(VERDICT, f" {answers(VERDICT)[0][:-1]} ", "")
    assert answered.tries[0].hint is None


def test_what_is_not_understood_is_asked_again_and_is_no_try() -> None:
    said, (answered,) = played(VERDICT, "eh!", *answers(VERDICT), "")
    assert len(answered.tries) == 1
    assert "a letter from a to b will do; ? follows the water a hop.\n  a) open" in said[1]


def test_after_three_times_the_answer_is_told() -> None:
    said, (answered,) = played(VERDICT, "!", "!", "!", "")
    assert answered.tries == ()
    assert said[3].startswith(f"The answer is {answers(VERDICT)[0]}.\n")


def test_every_blank_is_asked_in_turn() -> None:
    size, charge = answers(TANK)
    said, answered = played(TANK, size, charge, "")
    assert [one.blank for one in answered] == [1, 2]
    assert said[1].startswith(f"Right: {size}.\n")
    assert said[1].endswith("charged to (psi): ")
    said, (_, second) = played(TANK, size, "5 gal", "1", charge, "")
    assert [one.hint is None for one in second.tries] == [False, True]


def test_blank_that_is_done_already_is_passed_over() -> None:
    said, (answered,) = played(TANK, answers(TANK)[1], "", done=(1,))
    assert answered.blank == 2
    assert said[0].endswith("charged to (psi): ")


def test_blank_that_is_to_stay_empty_is_not_asked_for() -> None:
    said, answered = played(NO_TANK, "no tank", "")
    assert [one.blank for one in answered] == [1]
    assert len(said) == 2


def test_what_was_tried_is_told_when_the_talk_is_closed() -> None:
    heard: list[BlankAnswered] = []
    talking = talk(VERDICT, exercise_hints(VERDICT), [], heard.append)
    next(talking)
    talking.send(others(VERDICT)[0])
    assert heard == []
    talking.close()
    assert [[one.given for one in answered.tries] for answered in heard] == [others(VERDICT)]
