"""Quantities counted on, exactly as an author would have written the result."""

import pytest

from plumbnet.layout.units.counting_on import quantity_sum, stepped
from plumbnet.layout.units.measure import QuantityError
from plumbnet.layout.units.units import LENGTH, PRESSURE, SIZE, TEMPERATURE, Dimension


@pytest.mark.parametrize(
    ("first", "step", "count", "dimension", "text"),
    [
        ("10 ft", "10 ft", 19, LENGTH, "200 ft"),
        ("0.1 m", "0.1 m", 2, LENGTH, "0.3 m"),
        ("1/2 in", "1/4 in", 3, SIZE, "1.25 in"),
        ("1 ft", "1 in", 6, LENGTH, "1.5 ft"),
        ("20 ft", "-10 ft", 3, LENGTH, "-10 ft"),
        ("60 psi", "1 bar", 1, PRESSURE, "74.503773773 psi"),
        ("140 degF", "5 K", 2, TEMPERATURE, "158 degF"),
        (3, 2.5, 2, LENGTH, 8),
        (0.1, 0.2, 1, LENGTH, 0.3),
    ],
)
def test_steps_are_counted_in_the_unit_of_the_first(
    first: str | float, step: str | float, count: int, dimension: Dimension, text: str | float
) -> None:
    assert stepped(first, step, count, dimension, "us") == text


def test_a_bare_number_takes_the_unit_of_the_file() -> None:
    assert quantity_sum(3, "12 in", LENGTH, "us") == 4
    assert quantity_sum("3 m", 1, LENGTH, "metric") == "4 m"


@pytest.mark.parametrize("step", ["4 gal", "high", "1/0 ft", True, float("nan"), "9" * 101])
def test_what_is_no_such_quantity_is_refused(step: str | float) -> None:
    with pytest.raises(QuantityError):
        stepped("10 ft", step, 1, LENGTH, "us")
