"""Temperature and absolute pressure of liquid water in, its properties out of a table made from IAPWS-IF97.

The table holds each property as a sum of Chebyshev polynomials, which `tests/water_tables.py` fits to the library's
values; it spares whoever checks a house the library, whose loading takes longer than all the rest.
"""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

WITHIN = 1e-8
"""Part of a specific volume by which the table strays from the library's at the most."""

_TABLE = "water.json"


@dataclass(frozen=True, slots=True)
class Bounds:
    """Between which numbers something is in the table."""

    low: float
    high: float

    def hold(self, number: float) -> bool:
        """Whether a number lies between them, or on one of them; NaN does not."""
        return self.low <= number <= self.high

    def scaled(self, number: float) -> float:
        """A number from -1 at the lower one to 1 at the upper one."""
        return (2.0 * number - self.low - self.high) / (self.high - self.low)


@dataclass(frozen=True, slots=True)
class Curve:
    """A property of one number, by coefficients from the highest order down; right only within its bounds."""

    bounds: Bounds
    coefficients: Sequence[float]

    def at(self, number: float) -> float:
        """The property there."""
        return _summed(self.coefficients, self.bounds.scaled(number))


@dataclass(frozen=True, slots=True)
class Surface:
    """A property of temperature and absolute pressure: a row of coefficients for each order in pressure.

    Both from the highest order down; right only within the bounds.
    """

    temperature_k: Bounds
    pressure_abs_pa: Bounds
    rows: Sequence[Sequence[float]]

    def hold(self, temperature_k: float, pressure_abs_pa: float) -> bool:
        """Whether a state is in the table."""
        return self.temperature_k.hold(temperature_k) and self.pressure_abs_pa.hold(pressure_abs_pa)

    def at(self, temperature_k: float, pressure_abs_pa: float) -> float:
        """The property of water in that state."""
        warmth = self.temperature_k.scaled(temperature_k)
        return _summed([_summed(row, warmth) for row in self.rows], self.pressure_abs_pa.scaled(pressure_abs_pa))


def surface(name: str) -> Surface:
    """A property by the name it has in the table, in SI. Raises KeyError for one that is not there.

    >>> round(surface("volume_m3_kg").at(300.0, 3.0e6), 11)  # IAPWS R7-97(2012), table 5: 0.100215168e-2
    0.00100215168
    """
    return _surfaces()[name]


def property_curve(name: str) -> Curve:
    """What depends on one number alone, by its name in the table. Raises KeyError for one that is not there.

    >>> import math
    >>> round(property_curve("boiling_k_by_log_pa").at(math.log(1.0e6)), 6)  # IAPWS R7-97(2012), table 36: 453.035632 K
    453.035632
    """
    return _curves()[name]


def _summed(coefficients: Sequence[float], at: float) -> float:
    """The sum of a series of Chebyshev polynomials, from the highest order down. Source: Clenshaw (1955)."""
    twice, last, before = 2.0 * at, 0.0, 0.0
    for each in coefficients:
        last, before = each + twice * last - before, last
    return last - at * before


@cache
def _table() -> dict[str, dict[str, dict[str, list[list[float]]]]]:
    found: dict[str, dict[str, dict[str, list[list[float]]]]]
    found = json.loads((files("plumbnet") / "data" / _TABLE).read_text(encoding="utf-8"))
    return found


@cache
def _surfaces() -> dict[str, Surface]:
    return {name: _surface(one["bounds"], one["rows"]) for name, one in _table()["surfaces"].items()}


def _surface(bounds: Sequence[Sequence[float]], rows: Sequence[Sequence[float]]) -> Surface:
    temperature, pressure = (Bounds(*pair) for pair in bounds)
    return Surface(temperature, pressure, _falling(rows))


@cache
def _curves() -> dict[str, Curve]:
    return {
        name: Curve(Bounds(*one["bounds"][0]), _falling(one["rows"])[0]) for name, one in _table()["curves"].items()
    }


def _falling(rows: Sequence[Sequence[float]]) -> tuple[tuple[float, ...], ...]:
    """Coefficients of rising orders turned round."""
    return tuple(tuple(reversed(row)) for row in reversed(rows))
