"""Water that a warming store pushes back into its supply pipe: how warm it leaves, how warm the pipe becomes."""

import math
from itertools import pairwise

from plumbnet.physics.fluids import counted_from_k, specific_volume_m3_kg

_STEPS = 32
"""Steps of temperature; a hundred times as many change the result by less than a thousandth of a kelvin."""


def leaving_k(cold_k: float, hot_k: float, *, pressure_abs_pa: float) -> float:
    """Mean temperature, by mass, of the water that a well mixed store gives off while it is heated.

    A store that keeps its layers gives off colder water, so this is the safe side. Absolute pressure; `cold_k` where
    it gives off nothing. Raises OutsideWater (physics.water). Source: own derivation: of the mass m = V / v(T) in the
    store what leaves is -dm, so T_mean = sum(T dm) / sum(dm); densities from IAPWS R7-97(2012), equation 7.

    >>> round(leaving_k(283.15, 333.15, pressure_abs_pa=450e3) - 273.15)  # 10 to 60 degC: past half way
    40
    """
    base_k = counted_from_k(cold_k, pressure_abs_pa=pressure_abs_pa)
    if hot_k <= base_k:
        return cold_k
    width_k = (hot_k - base_k) / _STEPS
    ends_k = [base_k + width_k * step for step in range(_STEPS + 1)]
    held = [1.0 / specific_volume_m3_kg(end_k, pressure_abs_pa=pressure_abs_pa) for end_k in ends_k]
    given = [before - after for before, after in pairwise(held)]
    middles_k = [end_k + width_k / 2.0 for end_k in ends_k[:-1]]
    return math.fsum(t * m for t, m in zip(middles_k, given, strict=True)) / math.fsum(given)


def mixed_k(expansion_m3: float, held_m3: float, *, leaves_k: float, cold_k: float) -> float | None:
    """Temperature of a supply pipe that holds `held_m3` once `expansion_m3` of warmer water has mixed into it.

    None where the pipe does not hold the expansion, part of which then passes on. The densities of warm and cold water
    are taken as equal, which is true to one hundredth. Source: balance of heat, own derivation.

    >>> mixed_k(1.0, 4.0, leaves_k=320.0, cold_k=280.0)
    290.0
    """
    if expansion_m3 > held_m3:
        return None
    share = expansion_m3 / held_m3 if held_m3 else 0.0
    return cold_k + share * (leaves_k - cold_k)
