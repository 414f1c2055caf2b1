from plumbnet.report.worksheets.exercise_session import talk
from plumbnet.study.exercise.exercise import Exercise
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.walk_choice import answer_walks

(VERDICT,) = exercises(1, 1, about="verdict")
(TANK,) = exercises(8, 2, about="tank")
(NO_TANK,) = exercises(4, 2, about="tank")


def played(exercise: Exercise, *typed: str) -> tuple[list[str], bool]:
    """What is said, and whether all answers were right."""
    talking = talk(exercise, answer_walks(exercise))
    said = [next(talking)]
    try:
        for line in typed:
            said.append(talking.send(line))  # noqa: PERF401  its end is what is wanted
    except StopIteration as end:
        return said, bool(end.value)
    raise AssertionError("it still waits for an answer")


def answers(exercise: Exercise) -> list[str]:
    return [blank.answer("us") for blank in exercise.asked.blanks]


def test_right_answer_is_called_right_and_explained() -> None:
    said, is_right = played(VERDICT, *answers(VERDICT), "")
    assert is_right
    assert said[0].endswith("heater is: ")
    assert said[1].startswith(f"Right: {answers(VERDICT)[0]}.\n\n{VERDICT.asked.because[0][:20]}")
    assert said[1].endswith("Enter to go on: ")


def test_wrong_answer_is_put_right_and_explained() -> None:
    wrong = {"open": "trapped", "trapped": "open"}[answers(VERDICT)[0]]
    said, is_right = played(VERDICT, wrong, "")
    assert not is_right
    assert said[1].startswith(f"Not {wrong}: the answer is {answers(VERDICT)[0]}.\n")


def test_slip_of_the_pen_is_no_wrong_answer() -> None:
    _, is_right = played(VERDICT, f" {answers(VERDICT)[0][:-1]} ", "")
    assert is_right


def test_what_is_not_understood_is_asked_again() -> None:
    said, is_right = played(VERDICT, "eh?", *answers(VERDICT), "")
    assert is_right
    assert "a letter from a to b will do.\n  a) open" in said[1]


def test_after_three_times_the_answer_is_told() -> None:
    said, is_right = played(VERDICT, "?", "?", "?", "")
    assert not is_right
    assert said[3].startswith(f"The answer is {answers(VERDICT)[0]}.\n")


def test_every_blank_is_asked_in_turn() -> None:
    size, charge = answers(TANK)
    said, is_right = played(TANK, size, charge, "")
    assert is_right
    assert said[1].startswith(f"Right: {size}.\n")
    assert said[1].endswith("charged to (psi): ")
    _, is_right = played(TANK, size, "5 gal", charge, "")
    assert is_right
    _, is_right = played(TANK, size, "1", "")
    assert not is_right


def test_blank_that_is_to_stay_empty_is_not_asked_for() -> None:
    said, is_right = played(NO_TANK, "no tank", "")
    assert is_right
    assert len(said) == 2
