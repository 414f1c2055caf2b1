"""Results of two apprentices: Ada held that a meter is no valve and saw through it, Ben passed over a check."""

from plumbnet.study.training.results_file import AnswerGiven, Dealt, Results, Sitting, TryGiven, with_answer

METER, CHECK = "meter-is-no-valve", "check-passed-over"
HELD, MISSED, RIGHT = (
    TryGiven(given="open", held=METER),
    TryGiven(given="open", held=CHECK),
    TryGiven(given="trapped"),
)


def given(day: str, results: Results, *tries: TryGiven, could: tuple[str, ...]) -> Results:
    """The results with one answer more."""
    one = AnswerGiven(exercise=1, blank=1, question="verdict", right="trapped", tries=tries, could=could)
    return with_answer(results, Sitting(day=day, dealt=Dealt()), one)


ADA = given("2026-03-02", given("2026-03-01", Results(), HELD, RIGHT, could=(METER,)), RIGHT, could=(METER, CHECK))
BEN = given("2026-03-01", Results(), MISSED, could=(CHECK,))
