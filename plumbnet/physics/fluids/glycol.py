"""Glycol in water by volume and its temperature in, density, growth and freezing point out.

Properties are CoolProp's fits (`INCOMP::APG`, `INCOMP::AEG`) of the tables in ASHRAE Handbook Fundamentals, 2001, for
industrially inhibited solutions. Those two take the part by volume; its `MPG` and `MEG` take the part by mass. They
hold from 10 to 60 per cent and from -35 to 100 degC, and know no pressure. CoolProp is the optional extra `glycol`.
"""

from functools import lru_cache
from typing import Literal, TypeAlias

from plumbnet.physics.fluids import expansion, water

Glycol: TypeAlias = Literal["propylene", "ethylene"]

LEAST, MOST = 0.1, 0.6
"""Parts by volume between which the tables hold; plain water, 0, is taken from IAPWS-IF97."""

COLDEST_K, HOTTEST_K = 238.15, 373.15
"""Temperatures between which the tables hold, where the solution is not frozen."""

GLYCOL_SOURCE = "ASHRAE Handbook Fundamentals 2001, as fitted in CoolProp (INCOMP::APG and AEG)"

_FLUIDS: dict[Glycol, str] = {"propylene": "APG", "ethylene": "AEG"}
_ROUNDING = 1e-9  # relative: a bound passed by less is met, but for the conversion of units
_ANY_PRESSURE_PA = 1e6  # the library asks for one and does not use it
_ANY_LIQUID_K = 300.0  # likewise, where it asks for a temperature


class GlycolMissing(ImportError):
    """The library of glycol properties is not installed."""


class OutsideGlycol(ValueError):
    """A solution asked for is frozen, boils or lies outside the tables; the text says which."""


def glycol_density_kg_m3(glycol: Glycol, part: float, temperature_k: float) -> float:
    """Mass of a cubic metre of solution with that part of glycol by volume.

    Plain water, a part of 0, at one atmosphere or its saturation pressure. Raises OutsideGlycol, GlycolMissing.

    >>> round(glycol_density_kg_m3("propylene", 0.3, 293.15), 1)  # ASHRAE Fundamentals 2001: 1028.35 at 20 degC
    1028.3
    """
    if part == 0.0:
        return 1.0 / water.specific_volume_m3_kg(temperature_k, pressure_abs_pa=water.ATMOSPHERE_PA)
    _demand_liquid(glycol, part, temperature_k)
    return _property("D", _FLUIDS[glycol], part, min(max(temperature_k, COLDEST_K), HOTTEST_K))


def glycol_growth(glycol: Glycol, part: float, cold_k: float, hot_k: float) -> float:
    """Part of its cold volume by which a solution grows when it is heated; 0.0 where it is not.

    Plain water as `expansion.growth` at one atmosphere. Raises OutsideGlycol, GlycolMissing.

    >>> round(glycol_growth("propylene", 0.5, 283.15, 353.15), 4)  # ASHRAE Fundamentals 2001: 1048.04/1001.05 - 1
    0.0469
    """
    if part == 0.0:
        return expansion.growth(cold_k, hot_k, pressure_abs_pa=water.ATMOSPHERE_PA)
    cold, hot = (glycol_density_kg_m3(glycol, part, t) for t in (cold_k, hot_k))
    return cold / hot - 1.0 if hot_k > cold_k else 0.0


def freezing_k(glycol: Glycol, part: float) -> float:
    """Temperature at which ice begins to form in the solution.

    Raises OutsideGlycol, GlycolMissing.

    >>> round(freezing_k("propylene", 0.396) - 273.15)  # ASHRAE Fundamentals 2001: -21.1 degC
    -21
    """
    if part == 0.0:
        return water.LOWEST_K
    if not _within(part, LEAST, MOST):
        raise OutsideGlycol(
            f"{part:.0%} of glycol by volume is neither plain water nor within {LEAST:.0%} to {MOST:.0%}"
        )
    return _property("T_freeze", _FLUIDS[glycol], part, _ANY_LIQUID_K)


def _within(value: float, least: float, most: float) -> bool:
    return least * (1.0 - _ROUNDING) <= value <= most * (1.0 + _ROUNDING)


def _demand_liquid(glycol: Glycol, part: float, temperature_k: float) -> None:
    freezes_k = freezing_k(glycol, part)
    solution = f"water with {part:.0%} {glycol} glycol by volume"
    if temperature_k < freezes_k:
        raise OutsideGlycol(
            f"{solution} freezes at {freezes_k - 273.15:.1f} degC; {temperature_k - 273.15:.1f} is colder"
        )
    if not _within(temperature_k, COLDEST_K, HOTTEST_K):
        raise OutsideGlycol(
            f"{solution} is known from {COLDEST_K - 273.15:.0f} to {HOTTEST_K - 273.15:.0f} degC, "
            f"not at {temperature_k - 273.15:.1f}"
        )


@lru_cache(maxsize=4096)
def _property(name: str, fluid: str, part: float, temperature_k: float) -> float:
    try:
        from CoolProp.CoolProp import PropsSI  # noqa: PLC0415  an optional extra, heavy to load
    except ImportError as error:
        raise GlycolMissing("antifreeze needs the library CoolProp: pip install plumbnet[glycol]") from error
    solution = f"INCOMP::{fluid}[{min(max(part, LEAST), MOST)!r}]"
    return float(PropsSI(name, "T", temperature_k, "P", _ANY_PRESSURE_PA, solution))
