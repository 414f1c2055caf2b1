"""Usual sizes, pressures and temperatures of buildings, from which exercises draw theirs: American and metric.

All of it is common practice; no table of a maker stands behind it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from plumbnet.layout.units import Customary

RoundNumber = int | float
"""A round number as it is written into a file."""
CAPACITY_SHARE = 1.25
"""Capacity of a relief valve over the input it serves, at the least."""


@dataclass(frozen=True, slots=True)
class Storage:
    """A usual storage heater: what it holds, and its input."""

    volume: int
    input: int


@dataclass(frozen=True, slots=True)
class _Unit:
    """The units in which layouts give their quantities."""

    pressure: str
    temperature: str
    volume: str
    length: str
    power: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Usual:
    """What is usual in the buildings of some countries; numbers are in the units of `unit`."""

    units: Customary
    unit: _Unit
    mains: tuple[int, ...]
    """Street pressures that need no reducer."""
    high_mains: tuple[int, ...]
    """Street pressures above what a building may have at its taps."""
    rises: tuple[int, ...]
    """By how much a street's pressure may rise (invented)."""
    boosts: tuple[int, ...]
    """By how much booster pumps raise it (invented)."""
    reducer_sets: tuple[int, ...]
    """Where reducers are set."""
    main_temperatures: tuple[int, ...]
    """Temperatures of the water from the street in winter."""
    setpoints: tuple[int, ...]
    """Setpoints of water heaters."""
    tank_sizes: tuple[int, ...]
    """Sizes of small expansion tanks, of the program's own round series."""
    factory_charge: int
    """Charge with which a tank leaves the factory, and keeps where nobody pumps it up."""
    relief_pressures: tuple[int, ...]
    relief_temperature: int
    """Set pressures and temperature of a water heater's relief valve; what comes oftener stands oftener."""
    spill_sets: tuple[int, ...]
    """Where expansion relief valves are set."""
    head: float
    """Pressure of water that stands one unit of length high."""
    floor: int
    """Height from floor to floor."""
    tap: int
    """Height of a tap above its floor."""
    basement: RoundNumber
    """Height of a basement's floor, below that of the building."""
    storage_heaters: tuple[Storage, ...]
    large_storage_heaters: tuple[Storage, ...]
    tankless_inputs: tuple[int, ...]
    """Inputs of tankless heaters."""
    indirect_volumes: tuple[int, ...]
    coil_volume: RoundNumber
    """What indirect heaters hold, and the coil in one of them."""
    plate_volume: RoundNumber
    """What a plate exchanger holds on each side."""
    collector_volumes: tuple[RoundNumber, ...]
    collector_hottest: int
    collector_relief: int
    collector_fill: int
    collector_power: int
    """Solar collectors: what they hold, how hot they come to, what their relief valve opens at, what their circuit is
    filled to, and what the sun gives them."""
    roof: int
    """Height of what stands on a roof or under it, above the building's floor."""
    cistern_volume: int
    boiler_relief: int
    boiler_fill: int
    """Set pressure of a house boiler's relief valve, and the pressure it is filled to."""
    is_filled_by_hand: bool
    """Whether heating circuits are filled through a loop by hand, and not by a reducer that stands open."""
    boiler_volumes: tuple[int, ...]
    boiler_setpoints: tuple[int, ...]
    boiler_inputs: tuple[int, ...]
    emitter_volumes: tuple[int, ...]
    """What house boilers and the emitters on them hold, and how hot and at what input they run."""
    heating_tank_sizes: tuple[int, ...]
    heating_tank_charges: tuple[int, ...]
    """Tanks on heating circuits; what comes oftener stands oftener."""
    capacities: tuple[int, ...]
    """Capacities that relief valves come with."""
    tubes: tuple[str, ...]
    lengths: tuple[int, ...]
    """Pipes to the taps: of what, and how long."""
    circulation_tube: str
    heating_tube: str
    heating_lengths: tuple[int, ...]
    """Pipes of a circulation, and of a heating circuit with their lengths."""

    def capacity(self, heater_input: int) -> int:
        """Capacity of the relief valve that goes with an input.

        >>> USUAL["us"].capacity(40_000), USUAL["us"].capacity(199_000), USUAL["metric"].capacity(24)
        (105000, 250000, 30)
        """
        return next(one for one in self.capacities if one >= CAPACITY_SHARE * heater_input)


_AMERICAN = Usual(
    units="us",
    unit=_Unit(pressure="psi", temperature="degF", volume="gal", length="ft", power="Btu/h"),
    mains=(40, 45, 48, 50, 52, 55, 58, 60, 62, 65, 68, 70, 72, 75),
    high_mains=(85, 90, 95, 100, 105, 110),
    rises=(15, 30),
    boosts=(15, 20, 25),
    reducer_sets=(45, 50, 55, 60),
    main_temperatures=(40, 45, 50, 55, 60),
    setpoints=(120, 125, 130, 140),
    tank_sizes=(2, 3, 5, 8, 10, 15),
    factory_charge=40,
    relief_pressures=(125, 150, 150),
    relief_temperature=210,
    spill_sets=(75, 80, 100),
    head=0.433,
    floor=10,
    tap=3,
    basement=-8,
    storage_heaters=(
        Storage(30, 30_000),
        Storage(40, 36_000),
        Storage(50, 40_000),
        Storage(75, 75_000),
        Storage(80, 76_000),
    ),
    large_storage_heaters=(Storage(75, 125_000), Storage(80, 150_000), Storage(100, 199_000)),
    tankless_inputs=(120_000, 150_000, 180_000, 199_000),
    indirect_volumes=(30, 40, 60),
    coil_volume=1.5,
    plate_volume=0.5,
    collector_volumes=(1.5, 2, 3),
    collector_hottest=220,
    collector_relief=90,
    collector_fill=30,
    collector_power=12_000,
    roof=34,
    cistern_volume=60,
    boiler_relief=30,
    boiler_fill=12,
    is_filled_by_hand=False,
    boiler_volumes=(4, 6, 8),
    boiler_setpoints=(160, 180),
    boiler_inputs=(75_000, 90_000, 100_000),
    emitter_volumes=(3, 4, 5),
    heating_tank_sizes=(2, 3, 5, 5, 8),
    heating_tank_charges=(12, 12, 20),
    capacities=(105_000, 150_000, 200_000, 250_000),
    tubes=("copper-L 1/2 in", "copper-L 3/4 in", "pex 3/4 in"),
    lengths=(15, 20, 25, 30, 40, 50),
    circulation_tube="copper-L 1/2 in",
    heating_tube="copper-M 3/4 in",
    heating_lengths=(80, 100, 120),
)
_METRIC = Usual(
    units="metric",
    unit=_Unit(pressure="kPa", temperature="degC", volume="L", length="m", power="kW"),
    mains=(250, 275, 300, 310, 320, 340, 350, 375, 400, 420, 440, 450, 480, 500),
    high_mains=(580, 600, 620, 640, 660, 680),
    rises=(100, 200),
    boosts=(100, 120, 150),
    reducer_sets=(300, 350, 400, 450),
    main_temperatures=(5, 8, 10, 12, 15),
    setpoints=(50, 55, 60, 65),
    tank_sizes=(8, 12, 20, 30, 50, 80),
    factory_charge=250,
    relief_pressures=(700, 1000, 1000),
    relief_temperature=95,
    spill_sets=(500, 550, 700),
    head=9.8,
    floor=3,
    tap=1,
    basement=-2.5,
    storage_heaters=(Storage(80, 2), Storage(120, 3), Storage(150, 3), Storage(200, 3), Storage(300, 6)),
    large_storage_heaters=(Storage(300, 36), Storage(400, 44), Storage(500, 58)),
    tankless_inputs=(18, 24, 27, 35),
    indirect_volumes=(120, 150, 200),
    coil_volume=6,
    plate_volume=2,
    collector_volumes=(6, 8, 12),
    collector_hottest=105,
    collector_relief=600,
    collector_fill=200,
    collector_power=4,
    roof=10,
    cistern_volume=230,
    boiler_relief=300,
    boiler_fill=100,
    is_filled_by_hand=True,
    boiler_volumes=(15, 20, 30),
    boiler_setpoints=(70, 80),
    boiler_inputs=(20, 24, 28),
    emitter_volumes=(10, 15, 20),
    heating_tank_sizes=(8, 12, 20, 20, 30),
    heating_tank_charges=(100, 100, 150),
    capacities=(10, 30, 50, 75),
    tubes=("copper-B 15 mm", "copper-B 22 mm", "copper-C 22 mm"),
    lengths=(4, 6, 8, 10, 12, 15),
    circulation_tube="copper-B 15 mm",
    heating_tube="copper-C 22 mm",
    heating_lengths=(25, 30, 35),
)
USUAL: Mapping[Customary, Usual] = MappingProxyType({one.units: one for one in (_AMERICAN, _METRIC)})
"""What is usual, by the units in which people build."""
