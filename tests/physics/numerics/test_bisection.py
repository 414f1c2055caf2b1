"""The least value at which something holds, sought by halving."""

import pytest

from plumbnet.physics.numerics.bisection import CLOSE, least


def above(edge: float, floor: float = 1e-3, guess: float = 1.0) -> float:
    return least(lambda value: value >= edge, guess, floor=floor)


@pytest.mark.parametrize("guess", [1e-3, 1.0, 3.0, 7.0, 7.1, 1e4])
def test_edge_is_found_from_below_and_from_above(guess: float) -> None:
    found = above(7.0, guess=guess)
    assert 7.0 <= found <= 7.0 * (1.0 + CLOSE)


def test_guess_that_is_the_edge_is_kept_to_a_millionth() -> None:
    assert above(1.0) == pytest.approx(1.0, rel=CLOSE)
    assert above(1.0) >= 1.0


def test_what_is_found_holds() -> None:
    for edge in (0.3, 0.5, 0.7, 1.3, 11.0):
        assert above(edge) >= edge


def test_nothing_is_sought_below_the_floor() -> None:
    # 8, 4, 2 hold; the next half is the floor
    asked: list[float] = []

    def holds(value: float) -> bool:
        asked.append(value)
        return True

    assert least(holds, 8.0, floor=1.0) == pytest.approx(1.0, rel=2 * CLOSE)
    assert min(asked) >= 1.0
    assert asked[:3] == [8.0, 4.0, 2.0]


def test_edge_below_the_first_half_of_the_guess_is_found() -> None:
    assert above(1.5e-3, guess=1.0) == pytest.approx(1.5e-3, rel=2 * CLOSE)


def test_value_is_sought_no_closer_than_a_millionth() -> None:
    asked: list[float] = []

    def holds(value: float) -> bool:
        asked.append(value)
        return value >= 0.7

    least(holds, 1.0, floor=1e-3)
    # guess and its half, then halvings of 0.5 until 0.7e-6 is left: 2 to the 20th is a million
    assert len(asked) == 2 + 20
