import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.numerics.root_finding import root


@given(wanted=st.floats(-0.99, 0.99))
def test_root_is_where_the_function_passes_zero(wanted: float) -> None:
    assert root(lambda x: math.sin(x) - math.sin(wanted), -1.0, 1.0, xtol=1e-12) == pytest.approx(wanted, abs=1e-11)


def test_it_is_as_close_as_is_asked_for() -> None:
    asked: list[float] = []

    def excess(x: float) -> float:
        asked.append(x)
        return x**3 - 0.3

    root(excess, 0.0, 1.0, xtol=0.1)
    few = len(asked)
    root(excess, 0.0, 1.0, xtol=1e-12)
    assert len(asked) > 2 * few


def test_no_root_between_two_values_is_an_error() -> None:
    with pytest.raises(ValueError, match="different signs"):
        root(lambda x: x, 1.0, 2.0)
