from posing import said

from plumbnet.study.exercise.generator import exercises

(ONE,) = (one for one in exercises(2, 5, 3, about="two-codes") if one.asked.outcome == "one")


def test_first_code_that_says_otherwise_is_told() -> None:
    passed, other = ("finding-overlooked", "code-too-strict")
    assert said(ONE, "both").name == passed
    assert said(ONE, "neither").name == other
