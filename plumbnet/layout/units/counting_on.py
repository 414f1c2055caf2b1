"""A quantity counted on by steps, and one height on another, as an author would write the result."""

from fractions import Fraction
from functools import lru_cache

from plumbnet.layout.units.measure import number_and_unit
from plumbnet.layout.units.units import TEMPERATURE, TEMPERATURE_DIFFERENCE, Dimension, Units


def stepped(first: str | float, step: str | float, count: int, dimension: Dimension, units: Units) -> str | float:
    """`first` and `count` steps, in the unit of `first`; a bare number stays one.

    A step of temperature is a difference. Raises QuantityError.

    >>> from plumbnet.layout.units.units import LENGTH
    >>> stepped("10 ft", "6 in", 3, LENGTH, "us"), stepped(3, "12 ft", 2, LENGTH, "us")
    ('11.5 ft', 27)
    >>> stepped("60 degC", "9 degF", 1, TEMPERATURE, "metric")
    '65 degC'
    """
    number, name, unit = number_and_unit(first, dimension, units)
    stepping = TEMPERATURE_DIFFERENCE if dimension is TEMPERATURE else dimension
    by, _name, its = number_and_unit(step, stepping, units)
    ratio = 1 if its.size == unit.size else Fraction(repr(its.size)) / Fraction(repr(unit.size))
    return _written(number + count * by * ratio, name)


@lru_cache(maxsize=65536)
def quantity_sum(first: str | float, second: str | float, dimension: Dimension, units: Units) -> str | float:
    """The sum of two quantities, in the unit of the first. Raises QuantityError.

    >>> from plumbnet.layout.units.units import LENGTH
    >>> quantity_sum("10 ft", "4 ft", LENGTH, "us"), quantity_sum("3.6 m", 0.8, LENGTH, "metric")
    ('14 ft', '4.4 m')
    """
    return stepped(first, second, 1, dimension, units)


def _written(number: Fraction, unit: str) -> str | float:
    text = f"{float(number):.12g}"
    if unit:
        return f"{text} {unit}"
    return int(number) if number.denominator == 1 else float(text)
