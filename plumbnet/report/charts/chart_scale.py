"""Values of a report as numbers on the scale of a chart, and the unit that stands beside it."""

from plumbnet.layout.units import Dimension, Units, to


def unit(dimension: Dimension, units: Units) -> str:
    """The unit of a scale.

    >>> from plumbnet.layout.units.quantity import PRESSURE
    >>> unit(PRESSURE, "us"), unit(PRESSURE, "metric")
    ('psi', 'kPa')
    """
    return dimension.unit_name(units)


def scaled(value: float, dimension: Dimension, units: Units) -> float:
    """A value in SI as a number on that scale.

    >>> from plumbnet.layout.units.quantity import PRESSURE
    >>> scaled(62_000.0, PRESSURE, "metric")
    62.0
    """
    return to(value, unit(dimension, units), dimension)
