"""Makes the table of water anew from the library's IAPWS-IF97: python tests/water_tables.py.

Each property is interpolated at Chebyshev's nodes; of the coefficients those are kept, and of each those decimals,
that are more than the rounding of the library's own sums.
"""

import json
import math
from collections.abc import Callable, Sequence
from pathlib import Path

from iapws.iapws97 import _PSat_T, _Region1, _TSat_P
from scipy.optimize import brentq

ROOT = Path(__file__).parent.parent
FILE = ROOT / "plumbnet" / "data" / "water.json"

TEMPERATURE_K = (273.15, 453.15)
PRESSURE_ABS_PA = (0.0, 3.0e6)
VAPOUR_ABS_PA = (611.3, 3.0e6)  # water of 0 degC boils at 611.213 Pa
DENSEST_ABS_PA = (1.0e3, 3.0e6)  # water that is densest, near 4 degC, boils at 813 Pa
SOURCE = (
    "IAPWS R7-97(2012): equation 7 (liquid water, extended past boiling), 30 and 31 (saturation), as the library iapws "
    "computes them; coefficients of Chebyshev polynomials of rising order in temperature, a row for each order in "
    "pressure, both scaled from -1 to 1 between the bounds; SI, pressures absolute; made by tests/water_tables.py"
)
SURFACES = {
    "volume_m3_kg": ("v", 1.0),
    "enthalpy_j_kg": ("h", 1e3),
    "heat_capacity_j_kg_k": ("cp", 1e3),
    "expansivity_per_k": ("alfav", 1.0),
    "compressibility_per_pa": ("kt", 1e-6),
}
ORDERS_T, ORDERS_P, ORDERS_CURVE = 36, 10, 40
KEPT = 1e-15
"""Part of the largest coefficient that the last decimal kept stands for."""

Bounds = tuple[float, float]


def densest_k(pressure_abs_pa: float) -> float:
    """Where water of this pressure is densest."""
    found = brentq(lambda t: _Region1(t, pressure_abs_pa / 1e6)["alfav"], 273.15, 283.15, xtol=1e-12, rtol=1e-15)
    return float(found)


CURVES: dict[str, tuple[Bounds, Callable[[float], float]]] = {
    "log_saturation_pa_by_k": (TEMPERATURE_K, lambda t: math.log(_PSat_T(t) * 1e6)),
    "boiling_k_by_log_pa": (
        (math.log(VAPOUR_ABS_PA[0]), math.log(VAPOUR_ABS_PA[1])),
        lambda log_pa: float(_TSat_P(math.exp(log_pa) / 1e6)),
    ),
    "densest_k_by_pa": (DENSEST_ABS_PA, densest_k),
}


def nodes(bounds: Bounds, orders: int) -> list[float]:
    """Where polynomials up to an order are fitted."""
    low, high = bounds
    return [(low + high) / 2 + (high - low) / 2 * math.cos(math.pi * (k + 0.5) / orders) for k in range(orders)]


def coefficients(values: Sequence[float]) -> list[float]:
    """Of rising order, from the values at the nodes."""
    count = len(values)
    found = [
        2.0 / count * math.fsum(one * math.cos(math.pi * order * (k + 0.5) / count) for k, one in enumerate(values))
        for order in range(count)
    ]
    return [found[0] / 2.0, *found[1:]]


def kept(rows: Sequence[Sequence[float]]) -> list[list[float]]:
    """Coefficients without what is rounding."""
    decimals = -math.floor(math.log10(KEPT * max(abs(each) for row in rows for each in row)))
    rounded = [[round(each, decimals) for each in row] for row in rows]
    least = 10 * 10.0**-decimals
    return [row[:last] for row in rounded if (last := _length(row, least))]


def _length(row: Sequence[float], least: float) -> int:
    return max((order + 1 for order, each in enumerate(row) if abs(each) > least), default=0)


def surface(name: str) -> list[list[float]]:
    """The rows of a property."""
    symbol, size = SURFACES[name]
    warmths, pressures = nodes(TEMPERATURE_K, ORDERS_T), nodes(PRESSURE_ABS_PA, ORDERS_P)
    by_warmth = [coefficients([float(_Region1(t, p / 1e6)[symbol]) * size for p in pressures]) for t in warmths]
    return kept([coefficients([row[order] for row in by_warmth]) for order in range(ORDERS_P)])


def curve(name: str) -> list[list[float]]:
    """The one row of what depends on one number."""
    bounds, value = CURVES[name]
    return kept([coefficients([value(at) for at in nodes(bounds, ORDERS_CURVE)])])


def table() -> dict[str, object]:
    """All that the file holds."""
    return {
        "source": SOURCE,
        "surfaces": {name: {"bounds": [TEMPERATURE_K, PRESSURE_ABS_PA], "rows": surface(name)} for name in SURFACES},
        "curves": {name: {"bounds": [CURVES[name][0]], "rows": curve(name)} for name in CURVES},
    }


if __name__ == "__main__":
    FILE.write_text(json.dumps(table(), indent=1) + "\n", encoding="utf-8")
