"""Quantities that many parts have, each between what it can lie at all, and between what it lies in most buildings.

`low` and `high` are what is usual, in SI; the bounds behind them, and what was thought of, stand in `sensible_bounds`.
"""

from plumbnet.layout.units.quantity import Quantity
from plumbnet.layout.units.sensible_bounds import LEAST_HELD_M3, LEAST_SET_PA, MOST_HELD_M3, MOST_STANDING_PA
from plumbnet.layout.units.units import PRESSURE, VOLUME


def standing_pressure(low: float | None = None, high: float | None = None) -> Quantity:
    """A pressure at which water stands, or by which it is held back or lifted; it may be none."""
    return Quantity(PRESSURE, at_least=0.0, at_most=MOST_STANDING_PA, usual=_usual(low, high))


def set_pressure(low: float | None = None, high: float | None = None) -> Quantity:
    """A pressure to which a valve is set."""
    return Quantity(PRESSURE, at_least=LEAST_SET_PA, at_most=MOST_STANDING_PA, usual=_usual(low, high))


def vessel_volume(low: float | None = None, high: float | None = None) -> Quantity:
    """What a vessel holds that is there to hold it."""
    return Quantity(VOLUME, at_least=LEAST_HELD_M3, at_most=MOST_HELD_M3, usual=_usual(low, high))


def water_inside(low: float | None = None, high: float | None = None) -> Quantity:
    """What stands in a part by the way; it may be none."""
    return Quantity(VOLUME, at_least=0.0, at_most=MOST_HELD_M3, usual=_usual(low, high))


def _usual(low: float | None, high: float | None) -> tuple[float, float] | None:
    return None if low is None or high is None else (low, high)
