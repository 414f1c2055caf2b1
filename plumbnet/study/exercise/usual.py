"""Usual sizes, pressures and temperatures in American buildings, from which exercises draw theirs.

All of it is common practice; no table of a maker stands behind it.
"""

from dataclasses import dataclass

MAINS_PSI = (40, 45, 48, 50, 52, 55, 58, 60, 62, 65, 68, 70, 72, 75)
"""Street pressures that need no reducer."""
HIGH_MAINS_PSI = (85, 90, 95, 100, 105, 110)
"""Street pressures above what a building may have at its taps."""
REDUCER_SETS_PSI = (45, 50, 55, 60)
"""Where reducers are set."""
MAIN_TEMPERATURES_F = (40, 45, 50, 55, 60)
"""Temperatures of the water from the street in winter."""
SETPOINTS_F = (120, 125, 130, 140)
"""Setpoints of water heaters."""
TANK_SIZES_GAL = (2, 3, 5, 8, 10, 15)
"""Sizes of small expansion tanks, of the program's own round series."""
FACTORY_CHARGE_PSI = 40
"""Charge with which a tank leaves the factory, and keeps where nobody pumps it up (common practice)."""
RELIEF_PSI, RELIEF_F = 150, 210
"""Set pressure and temperature of a water heater's relief valve."""
SPILL_SETS_PSI = (75, 80, 100)
"""Where expansion relief valves are set."""
PSI_PER_FT = 0.433
"""A foot of water, in psi."""
FLOOR_FT = 10
"""Height from floor to floor."""
TAP_FT = 3
"""Height of a tap above its floor."""
BOILER_RELIEF_PSI, BOILER_FILL_PSI = 30, 12
"""Set pressure of a house boiler's relief valve, and the pressure it is filled to."""
TANKLESS_INPUTS_BTU_H = (120_000, 150_000, 180_000, 199_000)
"""Inputs of tankless heaters."""
BOILER_INPUTS_BTU_H = (75_000, 90_000, 100_000)
"""Inputs of house boilers."""
CAPACITY_SHARE = 1.25
"""Capacity of a relief valve over the input it serves, at the least."""
CAPACITIES_BTU_H = (105_000, 150_000, 200_000, 250_000)
"""Capacities that relief valves come with."""


@dataclass(frozen=True, slots=True)
class Storage:
    """A usual storage heater: what it holds, and its input."""

    gallons: int
    input_btu_h: int


STORAGE_HEATERS = (
    Storage(30, 30_000),
    Storage(40, 36_000),
    Storage(50, 40_000),
    Storage(75, 75_000),
    Storage(80, 76_000),
)
LARGE_STORAGE_HEATERS = (Storage(75, 125_000), Storage(80, 150_000), Storage(100, 199_000))


def capacity_btu_h(input_btu_h: int) -> int:
    """Capacity of the relief valve that goes with an input, in Btu/h.

    >>> capacity_btu_h(40_000), capacity_btu_h(199_000)
    (105000, 250000)
    """
    return next(one for one in CAPACITIES_BTU_H if one >= CAPACITY_SHARE * input_btu_h)
