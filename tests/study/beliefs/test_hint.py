import pytest

from plumbnet.study.beliefs.hint import MeasureHints, told

WORDS = {"device": "meter"}
CAUSE, LESS, MORE = (told(name, WORDS) for name in ("meter-is-no-valve", "less-than-stands", "more-than-stands"))
HINTS = MeasureHints(60.0, 2.0, ((40.0, CAUSE), (41.5, MORE)), LESS, MORE)


def test_a_belief_is_answered_in_two_sentences_with_its_words_filled_in() -> None:
    assert CAUSE.text == (
        "You took meter for a plain piece of pipe; the water that comes back finds a check in it. "
        "Look at what the table says of meter, and which way it lets water pass."
    )
    assert (CAUSE.is_belief, CAUSE.holds) == (True, "A meter is no valve.")
    assert not LESS.is_belief


def test_a_name_nobody_knows_and_a_word_that_is_missing_are_refused() -> None:
    with pytest.raises(KeyError):
        told("nothing-of-the-kind", WORDS)
    with pytest.raises(KeyError):
        told("meter-is-no-valve", {})


@pytest.mark.parametrize(
    ("value", "hint"), [(40.5, CAUSE), (41.2, MORE), (38.1, CAUSE), (37.9, LESS), (50.0, LESS), (70.0, MORE)]
)
def test_a_number_is_told_by_the_nearest_cause_or_by_its_side(value: float, hint: object) -> None:
    assert HINTS.of(value) is hint
