"""Water that has no way out, its walls and how hot it is made in; its pressure and what an outlet lets go out.

All pressures are absolute. Nothing is linearised: the mass of the water stays, and its pressure is the one at which
it fills the room within the walls, by IAPWS-IF97. The truth lies between rigid walls and typical ones, so every
question is asked of both.
"""

import math
from bisect import bisect_left
from dataclasses import dataclass, replace
from functools import lru_cache

from plumbnet.physics.fluids import (
    HIGHEST_PA,
    OutsideWater,
    heat_capacity_j_kg_k,
    saturation_abs_pa,
    specific_volume_m3_kg,
)
from plumbnet.physics.vessels.walls import Shell

_NO_WALLS = Shell(0.0)
_STEP_K = 1e-9
"""A rise in temperature is found among the multiples of this, by halving."""


@dataclass(frozen=True, slots=True)
class Bracket:
    """An answer with rigid walls and one with the walls as they are; the truth lies between."""

    rigid: float
    walls: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LockedVolume:
    """A zone that is full of water at `cold_k` and `start_abs_pa` when its last way out closes.

    What is `heated` warms with its walls; what is `unheated` stays cold and only shares the pressure. Shells of
    one temperature join in one (`walls.joined`). Raises OutsideWater for a start that is no liquid water.
    """

    heated: Shell
    unheated: Shell = _NO_WALLS
    cold_k: float
    start_abs_pa: float

    def __post_init__(self) -> None:
        if not saturation_abs_pa(self.cold_k) <= self.start_abs_pa <= HIGHEST_PA:
            raise OutsideWater(f"{self.start_abs_pa:g} Pa absolute at {self.cold_k:g} K is no liquid water")

    @property
    def rigid(self) -> "LockedVolume":
        """The same water within walls that yield to nothing.

        >>> zone = LockedVolume(heated=Shell(0.2, 1e-9), cold_k=283.15, start_abs_pa=5e5)
        >>> zone.rigid.heated.compliance_per_pa
        0.0
        """
        return replace(self, heated=self.heated.rigid, unheated=self.unheated.rigid)

    @property
    def water_kg(self) -> float:
        """Water that is locked in.

        >>> zone = LockedVolume(heated=Shell(0.2), cold_k=283.15, start_abs_pa=5e5)
        >>> round(zone.water_kg, 2)  # 999.9 kg/m3
        199.98
        """
        return self.fits_kg(self.cold_k, pressure_abs_pa=self.start_abs_pa)

    def fits_kg(self, temperature_k: float, *, pressure_abs_pa: float) -> float:
        """Water that fits within the walls with the heated part at this temperature and all at this pressure.

        Below saturation pressure counted as saturated liquid. Raises OutsideWater outside 273.15 K to 623.15 K
        and 0 to 100 MPa.

        >>> zone = LockedVolume(heated=Shell(0.1), unheated=Shell(0.1), cold_k=283.15, start_abs_pa=5e5)
        >>> round(zone.fits_kg(333.15, pressure_abs_pa=5e5), 1)  # 0.1 m3 of each of 999.9 and 983.4 kg/m3
        198.3
        """
        rise_pa = pressure_abs_pa - self.start_abs_pa
        hot = self.heated.room_m3(rise_k=temperature_k - self.cold_k, rise_pa=rise_pa)
        cold = self.unheated.room_m3(rise_k=0.0, rise_pa=rise_pa)
        hot_m3_kg = specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure_abs_pa)
        cold_m3_kg = specific_volume_m3_kg(self.cold_k, pressure_abs_pa=pressure_abs_pa)
        return hot / hot_m3_kg + cold / cold_m3_kg

    def firing_s(self, rise_k: float, *, input_w: float, efficiency: float) -> float:
        """Time in which a burner raises the heated water by so much: m cp dT over the heat that reaches the water.

        Walls and losses take more, so the real time is longer; cp is that half-way. Raises ValueError for a burner
        that gives nothing.

        >>> zone = LockedVolume(heated=Shell(0.18927), cold_k=283.15, start_abs_pa=5e5)  # 50 gal
        >>> by_hand = 189.24 * 4187 * 10 / (11_723 * 0.8)  # 40000 Btu/h, of which 80 % reach the water
        >>> round(zone.firing_s(10.0, input_w=11_723, efficiency=0.8) / by_hand, 3)
        1.0
        """
        useful = input_w * efficiency
        if not useful > 0.0:
            raise ValueError(f"a burner of {input_w:g} W at an efficiency of {efficiency:g} heats nothing")
        volume = specific_volume_m3_kg(self.cold_k, pressure_abs_pa=self.start_abs_pa)
        heat = heat_capacity_j_kg_k(self.cold_k + rise_k / 2.0, pressure_abs_pa=self.start_abs_pa)
        return self.heated.volume_m3 / volume * heat * rise_k / useful


@dataclass(frozen=True, slots=True)
class Climb:
    """Locked water, the pressure it climbs to, the temperature it is heated to and what tanks take until then.

    Source: own derivation, mass of the water constant.
    """

    water: LockedVolume
    opens_abs_pa: float
    hot_k: float
    taken_m3: float = 0.0

    @property
    def rigid(self) -> "Climb":
        """The same within walls that yield to nothing."""
        return replace(self, water=self.water.rigid)

    def room_left_kg(self, temperature_k: float) -> float:
        """Water that would still find room at the opening pressure with the heated part at this temperature."""
        fits = self.water.fits_kg(temperature_k, pressure_abs_pa=self.opens_abs_pa)
        return fits + self.taken_m3 / self._volume_m3_kg(temperature_k) - self.water.water_kg

    def _volume_m3_kg(self, temperature_k: float) -> float:
        return specific_volume_m3_kg(temperature_k, pressure_abs_pa=self.opens_abs_pa)


@lru_cache(maxsize=4096)
def locked_rise_k(climb: Climb) -> float:
    """Rise in temperature that fills all room at the opening pressure; infinite where being hot does not.

    Nothing where it stands there from the start. Water colder than its density maximum shrinks first, and the rise
    counts from where it was. Raises OutsideWater.

    >>> zone = LockedVolume(heated=Shell(0.2), cold_k=277.594, start_abs_pa=515_010.0)  # 40 degF, 60 psig
    >>> round(locked_rise_k(Climb(zone, 515_010.0 + 84 * 6894.76, 333.15)) * 1.8)  # rigid, IAPWS-95: 84 psi to 50 degF
    10
    """
    cold_k = climb.water.cold_k
    if climb.opens_abs_pa <= climb.water.start_abs_pa or climb.room_left_kg(cold_k) <= 0.0:
        return 0.0
    if climb.hot_k <= cold_k or climb.room_left_kg(climb.hot_k) > 0.0:
        return math.inf
    steps = range(math.ceil((climb.hot_k - cold_k) / _STEP_K))
    return _STEP_K * bisect_left(steps, True, key=lambda step: climb.room_left_kg(cold_k + _STEP_K * step) <= 0.0)  # noqa: FBT003  what is looked for


@lru_cache(maxsize=4096)
def discharged_m3(climb: Climb) -> float:
    """Water that finds no room once all is hot, let out by an outlet that holds the zone at its opening pressure.

    Measured hot, at the outlet's pressure: the expansion less what the walls, tanks and the compression of the water
    take. An outlet that closes lower than it opens lets out more: ask with the pressure at which it closes. Nothing
    while the outlet stays shut. Water that would boil at that pressure counts as saturated liquid. Raises OutsideWater.

    >>> zone = LockedVolume(heated=Shell(0.2), cold_k=283.15, start_abs_pa=5e5)
    >>> round(discharged_m3(Climb(zone, 1.136e6, 333.15)) * 1000, 2)  # litres of 200; 10 to 60 degC: 1.68 %
    3.3
    """
    over_kg = max(0.0, -climb.room_left_kg(climb.hot_k))
    return over_kg * specific_volume_m3_kg(climb.hot_k, pressure_abs_pa=climb.opens_abs_pa)
