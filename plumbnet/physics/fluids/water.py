"""Temperature and absolute pressure of liquid water in, its properties by IAPWS-IF97 out.

Up to 180 degC and 30 bar absolute out of a table made from the library's values (`water_table`), beyond that from the
library itself, which is loaded for that alone.
Valid from 273.15 K to 623.15 K and up to 100 MPa (region 1 of the formulation). Water whose pressure lies
below saturation is taken at saturation pressure, so a careless pressure gives hot liquid and never steam.
"""

import math
from functools import cache, lru_cache
from importlib import import_module
from typing import Any, Final

from plumbnet.layout.units import ATMOSPHERE
from plumbnet.physics.fluids.water_table import WITHIN, property_curve, surface
from plumbnet.physics.numerics import root

ATMOSPHERE_PA: Final = ATMOSPHERE
LOWEST_K, HIGHEST_K = 273.15, 623.15  # limits of region 1: IAPWS R7-97(2012), section 5
HIGHEST_PA = 100.0e6  # likewise

_PA_PER_MPA = 1.0e6
_IN_LIBRARY = {  # symbol and size of unit
    "volume_m3_kg": ("v", 1.0),
    "enthalpy_j_kg": ("h", 1.0e3),
    "heat_capacity_j_kg_k": ("cp", 1.0e3),
    "expansivity_per_k": ("alfav", 1.0),
    "compressibility_per_pa": ("kt", 1.0 / _PA_PER_MPA),
}
_ABOVE_EVERY_MAXIMUM_K = 283.15  # water is densest near 277 K without pressure, and colder under it


class OutsideWater(ValueError):
    """A state asked for lies outside the range in which the properties of liquid water are known here.

    Of what was asked for, `temperature_k` or `pressure_abs_pa` is that which does; None where it is both together.
    """

    def __init__(self, text: str, *, temperature_k: float | None = None, pressure_abs_pa: float | None = None) -> None:
        super().__init__(text)
        self.temperature_k, self.pressure_abs_pa = temperature_k, pressure_abs_pa


def saturation_abs_pa(temperature_k: float) -> float:
    """Pressure at which water of this temperature boils.

    Absolute. Raises OutsideWater outside 273.15 K to 623.15 K. Source: IAPWS R7-97(2012), equation 30.

    >>> round(saturation_abs_pa(300.0), 4)  # table 35 there: 0.353658941e-2 MPa
    3536.5894
    """
    if not LOWEST_K <= temperature_k <= HIGHEST_K:
        text = f"{temperature_k:g} K is outside {LOWEST_K:g} K to {HIGHEST_K:g} K"
        raise OutsideWater(text, temperature_k=temperature_k)
    known = property_curve("log_saturation_pa_by_k")
    if known.bounds.hold(temperature_k):
        return math.exp(known.at(temperature_k))
    return float(_library()._PSat_T(temperature_k)) * _PA_PER_MPA  # noqa: SLF001  see _library


def boiling_k(pressure_abs_pa: float) -> float:
    """Temperature at which water under this pressure boils.

    Absolute. Raises OutsideWater outside 611.2 Pa to 16.5 MPa, between which it lies in 273.15 K to 623.15 K.
    Source: IAPWS R7-97(2012), equation 31.

    >>> round(boiling_k(1.0e5), 6)  # table 36 there: 372.755919 K
    372.755919
    """
    log_pa = math.log(pressure_abs_pa) if pressure_abs_pa > 0.0 else math.nan
    known = property_curve("boiling_k_by_log_pa")
    if known.bounds.hold(log_pa):
        return known.at(log_pa)
    if not saturation_abs_pa(LOWEST_K) <= pressure_abs_pa <= saturation_abs_pa(HIGHEST_K):
        raise OutsideWater(f"{pressure_abs_pa:g} Pa absolute boils no water of {LOWEST_K:g} K to {HIGHEST_K:g} K")
    return float(_library()._TSat_P(pressure_abs_pa / _PA_PER_MPA))  # noqa: SLF001  see _library


def specific_volume_m3_kg(temperature_k: float, *, pressure_abs_pa: float) -> float:
    """Room that one kilogram of liquid water takes up.

    Below saturation pressure the saturated liquid. Raises OutsideWater outside 273.15 K to 623.15 K and 0 to
    100 MPa. Source: IAPWS R7-97(2012), equation 7, table 3.

    >>> f"{specific_volume_m3_kg(300.0, pressure_abs_pa=3.0e6):.9g}"  # table 5 there: 0.100215168e-2
    '0.00100215168'
    """
    return _property("volume_m3_kg", temperature_k, pressure_abs_pa)


def enthalpy_j_kg(temperature_k: float, *, pressure_abs_pa: float) -> float:
    """Enthalpy of one kilogram of liquid water, counted from the liquid at the triple point.

    Range and errors as `specific_volume_m3_kg`. Source: IAPWS R7-97(2012), equation 7, table 3.

    >>> round(enthalpy_j_kg(300.0, pressure_abs_pa=3.0e6), 3)  # table 5 there: 115.331273 kJ/kg
    115331.273
    """
    return _property("enthalpy_j_kg", temperature_k, pressure_abs_pa)


def heat_capacity_j_kg_k(temperature_k: float, *, pressure_abs_pa: float) -> float:
    """Heat that warms one kilogram of liquid water by one kelvin at constant pressure.

    Range and errors as `specific_volume_m3_kg`. Source: IAPWS R7-97(2012), equation 7, table 3.

    >>> round(heat_capacity_j_kg_k(300.0, pressure_abs_pa=3.0e6), 5)  # table 5 there: 4.17301218 kJ/(kg K)
    4173.01218
    """
    return _property("heat_capacity_j_kg_k", temperature_k, pressure_abs_pa)


def expansivity_per_k(temperature_k: float, *, pressure_abs_pa: float) -> float:
    """Part of its volume by which water grows for each kelvin at constant pressure.

    Negative below the density maximum. Range and errors as `specific_volume_m3_kg`.
    Source: IAPWS R7-97(2012), equation 7, differentiated.

    >>> round(expansivity_per_k(298.15, pressure_abs_pa=ATMOSPHERE_PA) * 1e6)  # Kell (1975): 257.21
    257
    """
    return _property("expansivity_per_k", temperature_k, pressure_abs_pa)


def compressibility_per_pa(temperature_k: float, *, pressure_abs_pa: float) -> float:
    """Part of its volume by which water yields to each pascal at constant temperature.

    Range and errors as `specific_volume_m3_kg`. Source: IAPWS R7-97(2012), equation 7, differentiated.

    >>> round(compressibility_per_pa(298.15, pressure_abs_pa=ATMOSPHERE_PA) * 1e12)  # Kell (1975): 452.47
    452
    """
    return _property("compressibility_per_pa", temperature_k, pressure_abs_pa)


@lru_cache(maxsize=1024)
def densest_k(pressure_abs_pa: float) -> float:
    """Temperature at which water of this pressure is densest.

    3.96 degC at one atmosphere (measured: 3.98 degC, where the volume differs by 3e-9), colder under
    pressure; 273.15 K where it would have to be colder than that. Raises OutsideWater outside 0 to 100 MPa.
    Source: expansivity of IAPWS R7-97(2012) set to zero.

    >>> round(densest_k(ATMOSPHERE_PA) - 273.15, 2)
    3.96
    """
    known = property_curve("densest_k_by_pa")
    if known.bounds.hold(pressure_abs_pa):
        return known.at(pressure_abs_pa)

    def expansivity(temperature_k: float) -> float:
        return _liquid(temperature_k, pressure_abs_pa)["expansivity_per_k"]

    if expansivity(LOWEST_K) >= 0.0:
        return LOWEST_K
    return root(expansivity, LOWEST_K, _ABOVE_EVERY_MAXIMUM_K, xtol=1e-9)


def source(temperature_k: float, *, pressure_abs_pa: float) -> str:
    """Where the specific volume of water in a state is taken from, as a calculation sheet names it.

    Errors as `specific_volume_m3_kg`.

    >>> source(300.0, pressure_abs_pa=3.0e6)
    'interpolated from IAPWS R7-97(2012), equation 7, to 1e-8'
    """
    liquid_abs_pa = _liquid_abs_pa(temperature_k, pressure_abs_pa)
    return _named(7, is_table=surface("volume_m3_kg").hold(temperature_k, liquid_abs_pa))


def saturation_source(temperature_k: float) -> str:
    """Where the pressure at which water boils is taken from, as a calculation sheet names it.

    >>> saturation_source(500.0)
    'IAPWS R7-97(2012), equation 30'
    """
    return _named(30, is_table=property_curve("log_saturation_pa_by_k").bounds.hold(temperature_k))


def _named(equation: int, *, is_table: bool) -> str:
    name = f"IAPWS R7-97(2012), equation {equation}"
    return f"interpolated from {name}, to 1e{math.log10(WITHIN):.0f}" if is_table else name


@lru_cache(maxsize=16384)
def _property(name: str, temperature_k: float, pressure_abs_pa: float) -> float:
    liquid_abs_pa, known = _liquid_abs_pa(temperature_k, pressure_abs_pa), surface(name)
    if known.hold(temperature_k, liquid_abs_pa):
        return known.at(temperature_k, liquid_abs_pa)
    return _liquid(temperature_k, liquid_abs_pa)[name]


def _liquid_abs_pa(temperature_k: float, pressure_abs_pa: float) -> float:
    """The pressure, or that of saturation above it."""
    saturation = saturation_abs_pa(temperature_k)
    if not 0.0 <= pressure_abs_pa <= HIGHEST_PA:
        text = f"{pressure_abs_pa:g} Pa absolute is outside 0 to 100 MPa"
        raise OutsideWater(text, pressure_abs_pa=pressure_abs_pa)
    return max(pressure_abs_pa, saturation)


@lru_cache(maxsize=4096)
def _liquid(temperature_k: float, pressure_abs_pa: float) -> dict[str, float]:
    """Every property as the library has it.

    Its public class works out fifty properties in a millisecond; its equation of region 1 gives the few needed here
    in a tenth of that, and our tests hold it to the published check values.
    """
    liquid_abs_pa = _liquid_abs_pa(temperature_k, pressure_abs_pa)
    found = _library()._Region1(temperature_k, liquid_abs_pa / _PA_PER_MPA)  # noqa: SLF001  see above
    return {name: float(found[symbol]) * size for name, (symbol, size) in _IN_LIBRARY.items()}


@cache
def _library() -> Any:  # noqa: ANN401  the library says nothing of its types
    """The library, loaded when the table ends: its loading takes longer than a check."""
    return import_module("iapws.iapws97")
