import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.network.piping.potentials import Potentials, PotentialStep, fitted


def test_steps_in_a_row_add_up() -> None:
    found = fitted([0, 1, 2], [PotentialStep(1, 2, 30.0), PotentialStep(0, 1, 5.0)])
    assert found == Potentials({0: 0.0, 1: 5.0, 2: 35.0})


def test_step_down_lowers_what_lies_beyond() -> None:
    assert fitted([0, 1], [PotentialStep(0, 1, -5.0)]).lifts_pa == {0: 0.0, 1: -5.0}
    assert fitted([0, 1], [PotentialStep(1, 0, -5.0)]).lifts_pa == {0: 0.0, 1: 5.0}


def test_of_zones_that_nothing_joins_each_stands_at_no_height() -> None:
    found = fitted([4, 7, 2, 9], [PotentialStep(9, 7, 1.0), PotentialStep(4, 2, 3.0)])
    assert found.lifts_pa == {2: 0.0, 4: -3.0, 7: 0.0, 9: -1.0}


def test_step_that_the_first_ones_do_not_fit_is_left_out() -> None:
    first, second, third = PotentialStep(0, 1, 5.0), PotentialStep(1, 2, 5.0), PotentialStep(0, 2, 9.0)
    assert fitted([0, 1, 2], [first, second, third]) == Potentials({0: 0.0, 1: 5.0, 2: 10.0}, (third,))
    assert fitted([0, 1, 2], [third, second, first]) == Potentials({0: 0.0, 1: 4.0, 2: 9.0}, (first,))


def test_step_that_misses_by_rounding_alone_fits() -> None:
    steps = [PotentialStep(0, 1, 5.0), PotentialStep(1, 2, 5.0)]
    assert fitted([0, 1, 2], [*steps, PotentialStep(0, 2, 10.0009)]).left_out == ()
    assert fitted([0, 1, 2], [*steps, PotentialStep(2, 0, -10.0011)]).left_out == (PotentialStep(2, 0, -10.0011),)


@given(st.lists(st.tuples(st.integers(0, 9), st.integers(0, 9), st.integers(-99, 99)), max_size=30))
def test_heights_fit_every_step_that_is_not_left_out(drawn: list[tuple[int, int, int]]) -> None:
    steps = [PotentialStep(near, far, float(higher_pa)) for near, far, higher_pa in drawn]
    found = fitted(range(10), steps)
    for step in steps:
        missed_pa = found.lifts_pa[step.near] + step.higher_pa - found.lifts_pa[step.far]
        assert (missed_pa == pytest.approx(0.0, abs=1e-9)) == (step not in found.left_out)
