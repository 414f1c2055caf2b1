"""Two values brought nearer to each other."""

import pytest

from plumbnet.study.margins.turn_bracket import NEAR, TurnBracket


def test_value_that_was_tried_takes_the_place_of_the_one_like_it() -> None:
    bracket = TurnBracket(10.0, 2.0)
    assert (bracket.width, bracket.middle) == (8.0, 6.0)
    assert bracket.narrowed(6.0, holds=True) == TurnBracket(6.0, 2.0)
    assert bracket.narrowed(6.0, holds=False) == TurnBracket(10.0, 6.0)


@pytest.mark.parametrize(("bracket", "sign"), [(TurnBracket(0.0, 10.0), 1), (TurnBracket(10.0, 0.0), -1)])
def test_value_beside_a_guess_lies_on_the_side_asked_for(bracket: TurnBracket, sign: int) -> None:
    assert bracket.beside(4.0, 1.0, towards_turn=True) == pytest.approx(4.0 + sign * NEAR)
    assert bracket.beside(4.0, 1.0, towards_turn=False) == pytest.approx(4.0 - sign * NEAR)


def test_guess_outside_gives_the_middle() -> None:
    assert TurnBracket(0.0, 10.0).beside(11.0, 1.0, towards_turn=True) == 5.0
    assert not TurnBracket(0.0, 10.0).has(10.0)
