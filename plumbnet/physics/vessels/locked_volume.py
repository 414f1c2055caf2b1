"""Water that has no way out, its walls and how hot it is made in; its pressure and what an outlet lets go out.

All pressures are absolute. Nothing is linearised: the mass of the water stays, and its pressure is the one at which
it fills the room within the walls, by IAPWS-IF97. The truth lies between rigid walls and typical ones, so every
question is asked of both.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from plumbnet.physics.fluids import (
    HIGHEST_K,
    HIGHEST_PA,
    OutsideWater,
    boiling_k,
    heat_capacity_j_kg_k,
    saturation_abs_pa,
    specific_volume_m3_kg,
)
from plumbnet.physics.numerics import root
from plumbnet.physics.vessels.walls import Shell

_NO_WALLS = Shell(0.0)


@dataclass(frozen=True, slots=True)
class Bracket:
    """An answer with rigid walls and one with the walls as they are; the truth lies between."""

    rigid: float
    walls: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Locked:
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
    def rigid(self) -> "Locked":
        """The same water within walls that yield to nothing.

        >>> zone = Locked(heated=Shell(0.2, 1e-9), cold_k=283.15, start_abs_pa=5e5)
        >>> zone.rigid.heated.compliance_per_pa
        0.0
        """
        return replace(self, heated=self.heated.rigid, unheated=self.unheated.rigid)

    @property
    def water_kg(self) -> float:
        """Water that is locked in.

        >>> zone = Locked(heated=Shell(0.2), cold_k=283.15, start_abs_pa=5e5)
        >>> round(zone.water_kg, 2)  # 999.9 kg/m3
        199.98
        """
        return self.fits_kg(self.cold_k, pressure_abs_pa=self.start_abs_pa)

    def fits_kg(self, temperature_k: float, *, pressure_abs_pa: float) -> float:
        """Water that fits within the walls with the heated part at this temperature and all at this pressure.

        Below saturation pressure counted as saturated liquid. Raises OutsideWater outside 273.15 K to 623.15 K
        and 0 to 100 MPa.

        >>> zone = Locked(heated=Shell(0.1), unheated=Shell(0.1), cold_k=283.15, start_abs_pa=5e5)
        >>> round(zone.fits_kg(333.15, pressure_abs_pa=5e5), 1)  # 0.1 m3 of each of 999.9 and 983.4 kg/m3
        198.3
        """
        rise_pa = pressure_abs_pa - self.start_abs_pa
        hot = self.heated.room_m3(rise_k=temperature_k - self.cold_k, rise_pa=rise_pa)
        cold = self.unheated.room_m3(rise_k=0.0, rise_pa=rise_pa)
        hot_m3_kg = specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure_abs_pa)
        cold_m3_kg = specific_volume_m3_kg(self.cold_k, pressure_abs_pa=pressure_abs_pa)
        return hot / hot_m3_kg + cold / cold_m3_kg

    def pressure_abs_pa(self, temperature_k: float) -> float:
        """Pressure of the zone with its heated part at this temperature and nothing let out.

        Saturation pressure where the water leaves room for vapour. Raises OutsideWater where the pressure
        passes 100 MPa. Source: own derivation, mass of the water constant.

        >>> zone = Locked(heated=Shell(0.2), cold_k=283.15, start_abs_pa=101325.0)
        >>> round((zone.pressure_abs_pa(293.15) - 101325.0) / 1e5, 1)  # rigid, IAPWS-95: 32.8 bar
        32.8
        """
        water = self.water_kg

        def room_left_kg(pressure_abs_pa: float) -> float:
            return self.fits_kg(temperature_k, pressure_abs_pa=pressure_abs_pa) - water

        warmest_k = max(temperature_k, self.cold_k) if self.unheated.volume_m3 > 0.0 else temperature_k
        lowest = saturation_abs_pa(warmest_k)
        if room_left_kg(lowest) >= 0.0:
            return lowest
        if not room_left_kg(HIGHEST_PA) >= 0.0:
            raise OutsideWater(f"water locked at {self.cold_k:g} K and heated to {temperature_k:g} K passes 100 MPa")
        return root(room_left_kg, lowest, HIGHEST_PA, rtol=1e-12)

    def rise_to_k(self, pressure_abs_pa: float) -> float:
        """Rise in temperature of the heated part that brings the zone to this pressure.

        Nothing where it stands there from the start. Water colder than its density maximum shrinks first, and the
        rise counts from where it was. Raises OutsideWater where no liquid water reaches the pressure.

        >>> zone = Locked(heated=Shell(0.2), cold_k=277.594, start_abs_pa=515_010.0)  # 40 degF, 60 psig
        >>> round(zone.rise_to_k(515_010.0 + 84 * 6894.76) * 1.8)  # rigid, IAPWS-95: 84 psi from 40 to 50 degF
        10
        """
        water = self.water_kg

        def room_left_kg(temperature_k: float) -> float:
            return self.fits_kg(temperature_k, pressure_abs_pa=pressure_abs_pa) - water

        if room_left_kg(self.cold_k) <= 0.0:
            return 0.0
        boils = pressure_abs_pa < saturation_abs_pa(HIGHEST_K)
        hottest = boiling_k(pressure_abs_pa) if boils else HIGHEST_K
        if room_left_kg(hottest) > 0.0:
            if boils:
                return hottest - self.cold_k
            raise OutsideWater(f"water locked at {self.cold_k:g} K does not reach {pressure_abs_pa:g} Pa absolute")
        return root(room_left_kg, self.cold_k, hottest, xtol=1e-9) - self.cold_k

    def discharged_m3(self, temperature_k: float, *, opens_abs_pa: float) -> float:
        """Water let out on the way to this temperature by an outlet that holds the zone at its opening pressure.

        Measured hot, at the outlet's pressure: the expansion less what the walls and the compression of the water
        take. An outlet that closes lower than it opens lets out more: ask with the pressure at which it closes.
        Nothing while the outlet stays shut. Water that would boil at that pressure counts as saturated liquid.

        >>> zone = Locked(heated=Shell(0.2), cold_k=283.15, start_abs_pa=5e5)
        >>> round(zone.discharged_m3(333.15, opens_abs_pa=1.136e6) * 1000, 2)  # litres of 200; 10 to 60 degC: 1.68 %
        3.3
        """
        over = self.water_kg - self.fits_kg(temperature_k, pressure_abs_pa=opens_abs_pa)
        return max(0.0, over) * specific_volume_m3_kg(temperature_k, pressure_abs_pa=opens_abs_pa)

    def firing_s(self, rise_k: float, *, input_w: float, efficiency: float) -> float:
        """Time in which a burner raises the heated water by so much: m cp dT over the heat that reaches the water.

        Walls and losses take more, so the real time is longer; cp is that half-way. Raises ValueError for a burner
        that gives nothing.

        >>> zone = Locked(heated=Shell(0.18927), cold_k=283.15, start_abs_pa=5e5)  # 50 gal
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


def bracket(zone: Locked, question: Callable[[Locked], float]) -> Bracket:
    """The answer of a zone with rigid walls and with its own.

    >>> zone = Locked(heated=Shell(0.2, 1.267e-9, 36e-6), cold_k=298.15, start_abs_pa=5e5)
    >>> rise = bracket(zone, lambda each: each.rise_to_k(1.136e6))  # to 150 psig
    >>> round(rise.rigid, 1), round(rise.walls, 1)
    (1.1, 4.5)
    """
    return Bracket(question(zone.rigid), question(zone))


def linear_rise_pa(rise_k: float, *, shell: Shell, expansivity_per_k: float, compressibility_per_pa: float) -> float:
    """Rise of pressure of locked liquid by the handbook form, for small rises and for checks by hand.

    Expansivity and compressibility of the liquid are taken as constant, which for water holds over a few kelvin
    only. Source: API 521 (2007) and ISO 23251, 5.14.4, without leakage; the wall's part is `walls.elastic_tube`.

    >>> shell = Shell(0.001, compliance_per_pa=100 / 2e11, expansion_per_k=36e-6)  # diameter 100 times the wall
    >>> # eng-tips.com FAQ 378-1339: about 0.19 MPa for each kelvin
    >>> round(linear_rise_pa(1.0, shell=shell, expansivity_per_k=210e-6, compressibility_per_pa=4e-10) / 1e6, 3)
    0.193
    """
    net = expansivity_per_k - shell.expansion_per_k
    return net * rise_k / (compressibility_per_pa + shell.compliance_per_pa)
