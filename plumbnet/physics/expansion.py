"""Cold and hot temperature of heated water in, the volume by which it grows out."""

from functools import lru_cache

from plumbnet.physics.water import densest_k, expansivity_per_k, specific_volume_m3_kg


def growth(cold_k: float, hot_k: float, *, pressure_abs_pa: float) -> float:
    """Part of its cold volume by which water grows when it is heated; 0.0 where it does not grow.

    A fill colder than the density maximum shrinks first, so it counts from there. Absolute pressure, the same
    cold and hot; hot water below its saturation pressure counts as saturated liquid. Raises OutsideWater
    (physics.water). Source: IAPWS R7-97(2012), equation 7.

    >>> from plumbnet.physics.water import ATMOSPHERE_PA
    >>> round(growth(277.15, 353.15, pressure_abs_pa=ATMOSPHERE_PA), 3)  # handbooks, 4 to 80 degC: 1.029
    0.029
    """
    return _growth(cold_k, hot_k, pressure_abs_pa)


def expansion_m3(volume_m3: float, cold_k: float, hot_k: float, *, pressure_abs_pa: float) -> float:
    """Water that a cold volume gives off when it is heated.

    Absolute pressure; errors and source as `growth`.

    >>> from plumbnet.physics.water import ATMOSPHERE_PA
    >>> # 40 gal from 90 to 140 degF: almost half a gallon
    >>> round(expansion_m3(40.0, 305.372, 333.15, pressure_abs_pa=ATMOSPHERE_PA), 2)
    0.48
    """
    return volume_m3 * growth(cold_k, hot_k, pressure_abs_pa=pressure_abs_pa)


@lru_cache(maxsize=4096)
def _growth(cold_k: float, hot_k: float, pressure_abs_pa: float) -> float:
    cold, hot = (specific_volume_m3_kg(t, pressure_abs_pa=pressure_abs_pa) for t in (cold_k, hot_k))
    if expansivity_per_k(cold_k, pressure_abs_pa=pressure_abs_pa) < 0.0:
        cold_k = densest_k(pressure_abs_pa)
        cold = specific_volume_m3_kg(cold_k, pressure_abs_pa=pressure_abs_pa)
    return hot / cold - 1.0 if hot_k > cold_k else 0.0
