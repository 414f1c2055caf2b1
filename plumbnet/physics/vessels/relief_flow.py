"""Heat into water that is full to the brim; the flow that a relief valve has to let out, by the published form."""

from plumbnet.physics.fluids import expansivity_per_k, heat_capacity_j_kg_k, specific_volume_m3_kg


def thermal_expansion_m3_s(temperature_k: float, *, pressure_abs_pa: float, heat_w: float) -> float:
    """Flow by which water at a temperature and absolute pressure outgrows its room while heat goes into it.

    q = av Q/(500 G c) in gpm, av per degF, Q in Btu/h, G the density beside 500/60 lb/gal, c in Btu/lb degF; in SI
    q = av Q/(rho c). Nothing yields to the pressure, and the properties are those of one state. Raises OutsideWater.
    Source: thermal expansion of liquids in API 521, with the equation of API 520, from memory; a balance of heat
    gives the same.

    >>> flow = thermal_expansion_m3_s(333.15, pressure_abs_pa=1.136e6, heat_w=11_723.0)  # 40000 Btu/h, 140 degF
    >>> by_hand_gpm = 5.23e-4 / 1.8 * 40_000 / (500 * 0.984 * 0.999)
    >>> round(flow * 15_850.3 / by_hand_gpm, 2)
    1.0
    """
    volume = specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure_abs_pa)
    expansivity = expansivity_per_k(temperature_k, pressure_abs_pa=pressure_abs_pa)
    return expansivity * heat_w * volume / heat_capacity_j_kg_k(temperature_k, pressure_abs_pa=pressure_abs_pa)
