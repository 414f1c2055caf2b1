"""Water and glycol in water: density, growth and the rest, by temperature and pressure."""

from plumbnet.physics.fluids.expansion import counted_from_k, growth
from plumbnet.physics.fluids.glycol import (
    GLYCOL_SOURCE,
    GlycolMissing,
    OutsideGlycol,
    glycol_density_kg_m3,
    glycol_growth,
)
from plumbnet.physics.fluids.water import (
    ATMOSPHERE_PA,
    HIGHEST_K,
    HIGHEST_PA,
    LOWEST_K,
    OutsideWater,
    boiling_k,
    compressibility_per_pa,
    enthalpy_j_kg,
    expansivity_per_k,
    heat_capacity_j_kg_k,
    saturation_abs_pa,
    saturation_source,
    source,
    specific_volume_m3_kg,
)

__all__ = [
    "ATMOSPHERE_PA",
    "GLYCOL_SOURCE",
    "HIGHEST_K",
    "HIGHEST_PA",
    "LOWEST_K",
    "GlycolMissing",
    "OutsideGlycol",
    "OutsideWater",
    "boiling_k",
    "compressibility_per_pa",
    "counted_from_k",
    "enthalpy_j_kg",
    "expansivity_per_k",
    "glycol_density_kg_m3",
    "glycol_growth",
    "growth",
    "heat_capacity_j_kg_k",
    "saturation_abs_pa",
    "saturation_source",
    "source",
    "specific_volume_m3_kg",
]
