"""States as short codes."""

import pytest

from plumbnet.study.touching.touch_code import Touch, UnknownTouch, code_of, touches_of


@pytest.mark.parametrize(
    "touches", [[], [Touch(0, 0)], [Touch(12, 3), Touch(4, None, 0, 72.5), Touch(4, None, 1, -3.0)], [Touch(1, 1)] * 1]
)
def test_code_is_read_back_as_what_it_was_made_of(touches: list[Touch]) -> None:
    assert list(touches_of(code_of(touches))) == touches


def test_of_one_thing_only_the_last_touch_counts_and_order_is_kept() -> None:
    assert code_of(touches_of("3-1,5-0,3-2,5=0=1,5=0=2")) == "5-0,3-2,5=0=2"


@pytest.mark.parametrize(
    "code",
    ["x", "1", "1-", "-1-2", "1-2,", "1=2=", "1=2=1e9", "1=2=nan", "1-2;3-4", "٣-1", "1" * 9 + "-1", "1=0=" + "9" * 10],
)
def test_what_is_no_code_is_refused_in_a_sentence(code: str) -> None:
    with pytest.raises(UnknownTouch, match="as drawn"):
        touches_of(code)


def test_more_touches_than_anybody_follows_are_refused() -> None:
    assert len(touches_of(",".join(f"{at}-0" for at in range(64)))) == 64
    with pytest.raises(UnknownTouch, match="at most 64"):
        touches_of(",".join(f"{at}-0" for at in range(65)))
    with pytest.raises(UnknownTouch, match="at most 64"):
        touches_of("1-0," + "0" * 2_000)
