"""What a zone comes to with all heaters hot at once, of the pools that shares and shortages rest on."""

import math

from plumbnet.analysis.equilibrium.shared_tanks import SharedTanks
from plumbnet.network.piping.zones import Zone
from plumbnet.physics.fluids.water import ATMOSPHERE_PA


def settled_pa(settling: SharedTanks, zone: Zone) -> float | None:
    """Pressure at datum, gauge; None where a safety relief valve lifts or nothing holds it."""
    pool, group = settling._pool(zone), settling._group(zone)  # noqa: SLF001  the pools are what is tested
    if pool.pressure_abs_pa == math.inf or settling._is_relieved(zone):  # noqa: SLF001  likewise
        return None
    if pool.pressure_abs_pa <= group.loads[zone].static_abs_pa:
        return settling.network.start_pa(zone)
    return pool.pressure_abs_pa - ATMOSPHERE_PA - group.lifts_pa[zone]
