"""Cold and hot temperature of heated water in, the volume by which it grows out."""

from functools import lru_cache

from plumbnet.physics.fluids.water import densest_k, expansivity_per_k, specific_volume_m3_kg


@lru_cache(maxsize=4096)
def growth(cold_k: float, hot_k: float, *, pressure_abs_pa: float) -> float:
    """Part of its cold volume by which water grows when it is heated; 0.0 where it does not grow.

    A fill colder than the density maximum shrinks first, so it counts from there. Absolute pressure, the same
    cold and hot; hot water below its saturation pressure counts as saturated liquid. Raises OutsideWater
    (physics.water). Source: IAPWS R7-97(2012), equation 7.

    >>> from plumbnet.physics.fluids.water import ATMOSPHERE_PA
    >>> round(growth(277.15, 353.15, pressure_abs_pa=ATMOSPHERE_PA), 3)  # handbooks, 4 to 80 degC: 1.029
    0.029
    """
    base_k = counted_from_k(cold_k, pressure_abs_pa=pressure_abs_pa)
    cold, hot = (specific_volume_m3_kg(t, pressure_abs_pa=pressure_abs_pa) for t in (base_k, hot_k))
    return hot / cold - 1.0 if hot_k > base_k else 0.0


def counted_from_k(cold_k: float, *, pressure_abs_pa: float) -> float:
    """Temperature from which the growth of a cold fill counts: its own, or that of the density maximum above it.

    Absolute pressure; errors and source as `growth`.

    >>> from plumbnet.physics.fluids.water import ATMOSPHERE_PA
    >>> [round(counted_from_k(t, pressure_abs_pa=ATMOSPHERE_PA), 2) for t in (274.15, 283.15)]  # 1 and 10 degC
    [277.11, 283.15]
    """
    contracts = expansivity_per_k(cold_k, pressure_abs_pa=pressure_abs_pa) < 0.0
    return densest_k(pressure_abs_pa) if contracts else cold_k
