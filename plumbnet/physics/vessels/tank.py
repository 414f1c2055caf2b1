"""Water that heating drives out in, the tank that takes it up and the pressure at which it does out.

All pressures are absolute. Source of everything here, where no other is named: Boyle's law for the gas behind
the membrane (slow heating, so the gas stays at one temperature), own derivation.
"""

import csv
import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Literal

from plumbnet.layout.units import GALLON, LITRE

_ROUNDING = 1e-9  # relative: volumes and pressures closer than this are equal but for sums and unit conversions
_SETTLED = 1e-14  # relative step at which the pressure no longer changes in double precision
_M3_PER = {"gal": GALLON, "L": LITRE}


class NoTank(ValueError):
    """No tank can do this: the pressure it must not pass is no higher than the one at which it begins."""


def tank_volume_m3(expansion_m3: float, *, charge_abs_pa: float, start_abs_pa: float, end_abs_pa: float) -> float:
    """Smallest tank that takes up `expansion_m3` while the pressure climbs from start to end.

    Absolute pressures at the tank's height. A start below the charge counts from the charge: nothing enters
    until then. A charge of one atmosphere is a plain tank without membrane, filled from empty. Raises NoTank
    where the end is not above the start, ValueError for a charge that is no pressure. Source: Boyle's law;
    the form of ASME BPVC section IV, HG-709 (plain tanks) and of DIN 4807-5 (membrane tanks).

    >>> volume = tank_volume_m3(0.1, charge_abs_pa=100_000, start_abs_pa=100_000, end_abs_pa=200_000)
    >>> round(volume, 12)  # half of the gas is pressed away when the pressure doubles
    0.2
    """
    _demand_gas(charge_abs_pa)
    start = max(start_abs_pa, charge_abs_pa)
    if end_abs_pa <= start * (1.0 + _ROUNDING):
        raise NoTank(
            f"no tank can do this: it would begin at {start / 1000:.1f} kPa absolute and must end "
            f"at {end_abs_pa / 1000:.1f} kPa; lower the static pressure first"
        )
    return expansion_m3 / (charge_abs_pa / start - charge_abs_pa / end_abs_pa)


@dataclass(frozen=True, slots=True)
class Tank:
    """An expansion tank as it stands in a zone.

    `charge_abs_pa` is the gas alone, at the tank's own height; `start_abs_pa` the cold zone, at datum, as is
    every pressure asked of the tank. Water at the tank stands `head_pa` below the pressure at datum (rho g z;
    negative for a tank below datum). `most_m3` is the most water the membrane lets in, what it holds at the
    start included; None: as much as the shell. Raises ValueError for a charge that is no pressure.

    >>> tank = Tank(0.2, charge_abs_pa=100_000, start_abs_pa=100_000)
    >>> tank.uptake_m3(200_000)
    0.1
    """

    volume_m3: float
    charge_abs_pa: float
    start_abs_pa: float
    most_m3: float | None = None
    head_pa: float = 0.0

    def __post_init__(self) -> None:
        _demand_gas(self.charge_abs_pa)

    @property
    def opens_abs_pa(self) -> float:
        """Datum pressure above which the tank takes more water than it holds at the start.

        >>> Tank(0.1, charge_abs_pa=300_000, start_abs_pa=250_000, head_pa=20_000).opens_abs_pa
        320000
        """
        return max(self.start_abs_pa, self.charge_abs_pa + self.head_pa)

    @property
    def full_abs_pa(self) -> float:
        """Datum pressure at which the membrane takes no more; infinite where only the shell bounds it.

        >>> Tank(0.2, charge_abs_pa=100_000, start_abs_pa=100_000, most_m3=0.1).full_abs_pa
        200000.0
        """
        if self.most_m3 is None or self.most_m3 >= self.volume_m3:
            return math.inf
        exhausted = self.charge_abs_pa * self.volume_m3 / (self.volume_m3 - self.most_m3) + self.head_pa
        return max(self.opens_abs_pa, exhausted)

    @property
    def held_at_start_m3(self) -> float:
        """Water in the tank while the zone is cold.

        >>> Tank(0.2, charge_abs_pa=100_000, start_abs_pa=200_000).held_at_start_m3
        0.1
        """
        return self.held_at_m3(self.start_abs_pa)

    def held_at_m3(self, pressure_abs_pa: float) -> float:
        """All water in the tank while the zone stands at a pressure, absolute at datum.

        >>> Tank(0.2, charge_abs_pa=100_000, start_abs_pa=100_000).held_at_m3(400_000)
        0.15000000000000002
        """
        most = math.inf if self.most_m3 is None else self.most_m3
        return min(self._water_m3(pressure_abs_pa), most)

    def uptake_m3(self, pressure_abs_pa: float) -> float:
        """Water taken beyond what the tank holds at the start; nothing until it opens.

        Absolute pressure at datum.

        >>> Tank(0.2, charge_abs_pa=100_000, start_abs_pa=100_000, most_m3=0.05).uptake_m3(400_000)
        0.05
        """
        if pressure_abs_pa <= self.opens_abs_pa:
            return 0.0
        if self.most_m3 is not None and pressure_abs_pa >= self.full_abs_pa:
            return self.most_m3 - self.held_at_start_m3
        return self._water_m3(pressure_abs_pa) - self.held_at_start_m3

    def _water_m3(self, pressure_abs_pa: float) -> float:
        at_tank = pressure_abs_pa - self.head_pa
        return self.volume_m3 * (1.0 - self.charge_abs_pa / at_tank) if at_tank > self.charge_abs_pa else 0.0


def settled_abs_pa(expansion_m3: float, tanks: Sequence[Tank]) -> float | None:
    """Datum pressure at which the tanks of one zone have taken up the expansion; None where they never can.

    Absolute; the lowest such pressure, should the tanks stand still between two. Nothing to take up settles
    at the (lowest) start. Between the pressures at which a tank opens or is full, the uptakes are a sum of
    A - B/(p - head): in closed form for tanks at one height; for tanks at several by Newton's method, which
    climbs to the answer from below.

    >>> pair = [Tank(0.1, 100_000, 100_000), Tank(0.1, 100_000, 100_000)]
    >>> settled_abs_pa(0.1, pair), settled_abs_pa(0.2, pair)
    (200000.0, None)
    """
    if not tanks:
        return None
    if expansion_m3 <= 0.0:
        return min(tank.start_abs_pa for tank in tanks)
    stops = sorted({stop for tank in tanks for stop in (tank.opens_abs_pa, tank.full_abs_pa)} - {math.inf})
    enough = bisect_left(stops, expansion_m3, lo=1, key=lambda stop: _uptake_m3(tanks, stop))
    return _settled_above(expansion_m3, tanks, stops[enough - 1])


def nominal_size_m3(volume_m3: float, sizes: Sequence[float]) -> float | None:
    """The smallest of the (ascending) sizes that is large enough; None where none is.

    >>> nominal_size_m3(0.013, (0.008, 0.012, 0.020))
    0.02
    """
    place = bisect_left(sizes, volume_m3 * (1.0 - _ROUNDING))
    return sizes[place] if place < len(sizes) else None


@lru_cache(maxsize=2)
def nominal_sizes(units: Literal["us", "metric"]) -> tuple[float, ...]:
    """Tank sizes of the trade's usual steps, in cubic metres, ascending.

    Source: data/tanks.csv, a round series of this project and not a manufacturer's list.

    >>> nominal_sizes("metric")[:3]
    (0.008, 0.012, 0.02)
    """
    table = files("plumbnet") / "data" / "tanks.csv"
    rows = csv.DictReader(table.read_text(encoding="utf-8").splitlines())
    return tuple(sorted(float(row["size"]) * _M3_PER[row["unit"]] for row in rows if row["system"] == units))


def _demand_gas(charge_abs_pa: float) -> None:
    if not charge_abs_pa > 0.0:
        raise ValueError(f"a charge of {charge_abs_pa:g} Pa absolute is no pressure")


def _uptake_m3(tanks: Sequence[Tank], pressure_abs_pa: float) -> float:
    return math.fsum(tank.uptake_m3(pressure_abs_pa) for tank in tanks)


def _settled_above(expansion_m3: float, tanks: Sequence[Tank], floor_abs_pa: float) -> float | None:
    """Where the expansion is taken up, if no tank opens or fills between the floor and that pressure."""
    taking, rooms = [], [-expansion_m3]
    for tank in tanks:
        if tank.opens_abs_pa <= floor_abs_pa < tank.full_abs_pa:
            taking.append(tank)
            rooms.append(tank.volume_m3 - tank.held_at_start_m3)
        else:
            rooms.append(tank.uptake_m3(floor_abs_pa))
    room = math.fsum(rooms)
    return _where_gas_fits(room, taking, floor_abs_pa) if taking and room > _ROUNDING * expansion_m3 else None


def _where_gas_fits(room_m3: float, tanks: Sequence[Tank], floor_abs_pa: float) -> float:
    """Datum pressure at which the gas of all tanks is pressed into `room_m3`."""
    gas = [(tank.volume_m3 * tank.charge_abs_pa, tank.head_pa) for tank in tanks]
    lowest = min(head for _, head in gas) + math.fsum(amount for amount, _ in gas) / room_m3
    pressure = max(floor_abs_pa, lowest)
    # At datum the pressure of a high tank may be 0 or less; above its head it never is.
    lowest_head = min(head for _, head in gas)
    while True:
        excess = math.fsum([*(amount / (pressure - head) for amount, head in gas), -room_m3])
        step = excess / math.fsum(amount / (pressure - head) ** 2 for amount, head in gas)
        if step <= _SETTLED * (pressure - lowest_head) or pressure + step == pressure:
            return pressure
        pressure += step
