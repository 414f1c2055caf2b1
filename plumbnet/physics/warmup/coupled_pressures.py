"""Zones of warm water joined by one-way gates; the pressure at which each stands, and what must leave.

All pressures are absolute and stand at datum. Where a tank or a way out yields, the pressure is that of `settle`,
and water and walls count as rigid, as where a tank is sized. Where nothing yields, the zone is stiff: water and
walls yield as they do, by IAPWS-IF97 and elasticity.
"""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from plumbnet.physics.equilibrium import OneWayGate, Pool, ZoneLoad, settle
from plumbnet.physics.fluids import compressibility_per_pa, specific_volume_m3_kg
from plumbnet.physics.vessels import Shell, Tank
from plumbnet.physics.warmup.heated_bodies import Warm

_NO_WALLS = Shell(0.0)
_SPRING_PA = 1e11
"""A stiff zone is to the settling a vast tank under this pressure, which yields evenly: to 1e-4 over 10 MPa."""
_STIFFEST_M3_PA = 1e-16
"""Least yielding a stiff zone is given, that of a drop of water: where there is none at all, nothing is found."""
_ROUNDING_PA = 1.0
"""Pressures nearer than this are one, as everywhere in the analysis."""
HIGHEST_COUPLED_PA = 50e6
"""No zone is looked for above this: it broke long before."""
_SETTLED_PA = 1e-4
_MOST_TRIES = 30
_NOTHING_M3 = 1e-12
"""A volume that rounding leaves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoupledOutlet:
    """Where water of a zone can leave, any amount, from `opens_abs_pa` on.

    A relief valve that has opened lets out what must go for the pressure to stay there, and closes `blowdown_pa`
    lower once nothing more grows. A street or a cistern `gives_back` what it took.
    """

    name: str
    opens_abs_pa: float
    blowdown_pa: float = 0.0
    gives_back: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Basin:
    """A zone as it was filled: what holds its water, what can take water up, and what stays `unheated` in it.

    The properties of unheated water are those at `fill_abs_pa`, at its own height; at datum where that is left out.
    Of its outlets only the lowest ever opens, for each lets out any amount.
    """

    static_abs_pa: float
    cold_k: float
    tanks: Mapping[str, Tank] = field(default_factory=dict)
    outlets: tuple[CoupledOutlet, ...] = ()
    unheated: Shell = _NO_WALLS
    fill_abs_pa: float | None = None

    def water_abs_pa(self, rise_pa: float) -> float:
        """Pressure at which the properties of unheated water are taken, so far above the fill."""
        return (self.static_abs_pa if self.fill_abs_pa is None else self.fill_abs_pa) + rise_pa

    @property
    def rigid(self) -> "Basin":
        """The same zone with walls that yield to nothing."""
        return replace(self, unheated=self.unheated.rigid)

    @property
    def outlet(self) -> CoupledOutlet | None:
        """The outlet that opens first."""
        return min(self.outlets, key=lambda one: (one.opens_abs_pa, not one.gives_back, one.name), default=None)

    @property
    def opens_abs_pa(self) -> float:
        """Pressure at which water leaves by an outlet; never below the static pressure, infinite without one."""
        return math.inf if self.outlet is None else max(self.outlet.opens_abs_pa, self.static_abs_pa)

    @property
    def runs(self) -> bool:
        """Whether its outlet, set below the static pressure, stands open whatever is heated."""
        one = self.outlet
        return one is not None and not one.gives_back and one.opens_abs_pa < self.static_abs_pa - _ROUNDING_PA

    @property
    def reseats_abs_pa(self) -> float:
        """Pressure at which that outlet closes again; not below the static pressure, at which the supply feeds on."""
        blowdown = 0.0 if self.outlet is None else self.outlet.blowdown_pa
        return max(self.opens_abs_pa - blowdown, self.static_abs_pa)

    @property
    def held_by(self) -> CoupledOutlet | None:
        """The street or cistern that holds the zone's pressure, where one does."""
        return self.outlet if self.outlet is not None and self.outlet.gives_back else None

    def taken_m3(self, pressure_abs_pa: float) -> float:
        """Water in its tanks beyond what they held at the start."""
        return math.fsum(tank.uptake_m3(pressure_abs_pa) for tank in self.tanks.values())


@dataclass(frozen=True)
class Coupling:
    """The zones that gates join, with the water in them at one moment.

    `away_m3` is what has passed from each zone into others, or to a street that gives it back; `open_abs_pa` the
    pressure to which the outlets that stand open bring their zone.
    """

    basins: Mapping[int, Basin]
    gates: Sequence[OneWayGate[int]]
    warm: Sequence[Warm]
    away_m3: Mapping[int, float]
    open_abs_pa: Mapping[int, float]

    def stand(self, guess_abs_pa: Mapping[int, float]) -> "CoupledStanding":
        """Pressures of all zones. Starts looking at the guess; the answer does not depend on it."""
        bases: dict[int, float | None] = dict.fromkeys(self.basins)
        pools = self._settled({zone: self._load(zone, None, 0.0) for zone in self.basins})
        bases |= {zone: base for pool in pools for zone, base in self._stiff(pool)}
        if any(base is not None for base in bases.values()):
            pools = self._pressed(bases, guess_abs_pa)
        pressures = {zone: min(pool.pressure_abs_pa, HIGHEST_COUPLED_PA) for pool in pools for zone in pool.zones}
        rises = {zone: None if base is None else max(0.0, pressures[zone] - base) for zone, base in bases.items()}
        return CoupledStanding(pressures, rises, tuple(pools))

    def _pressed(self, bases: Mapping[int, float | None], guess_abs_pa: Mapping[int, float]) -> list[Pool[int]]:
        """Pools where some zones are stiff, by Newton's method for all zones at once."""
        trial = dict(guess_abs_pa)
        for _ in range(_MOST_TRIES):
            pools = self._settled({zone: self._load(zone, base, trial[zone]) for zone, base in bases.items()})
            found = {zone: min(pool.pressure_abs_pa, HIGHEST_COUPLED_PA) for pool in pools for zone in pool.zones}
            missed = max(abs(found[zone] - trial[zone]) for zone, base in bases.items() if base is not None)
            trial = found
            if missed <= _SETTLED_PA:
                break
        return pools

    def _settled(self, loads: Mapping[int, ZoneLoad]) -> list[Pool[int]]:
        """The pools of all zones; each zone by itself where no gate would then have to open."""
        alone = settle(loads, ())
        level = {zone: pool.pressure_abs_pa for pool in alone for zone in pool.zones}
        if all(level[gate.near] <= level[gate.far] or level[gate.far] >= gate.below_abs_pa for gate in self.gates):
            return alone
        return settle(loads, self.gates)

    def _load(self, zone: int, base_abs_pa: float | None, trial_abs_pa: float) -> ZoneLoad:
        basin = self.basins[zone]
        tanks = list(basin.tanks.values())
        if base_abs_pa is None:
            excess = self.excess_m3(zone, None)
            growth = excess if excess > _NOTHING_M3 else 0.0
        else:
            rise = max(0.0, trial_abs_pa - base_abs_pa)
            spring = _spring(base_abs_pa, self._yielding_m3_pa(zone, rise))
            growth = self.excess_m3(zone, rise) + spring.uptake_m3(base_abs_pa + rise)
            tanks.append(spring)
        growths = {str(zone): growth} if growth > 0.0 else {}
        return ZoneLoad(growths, basin.static_abs_pa, tuple(tanks), self._outlet_abs_pa(zone))

    def _outlet_abs_pa(self, zone: int) -> float:
        basin = self.basins[zone]
        return self.open_abs_pa.get(zone, math.inf if basin.held_by is None else basin.opens_abs_pa)

    def _stiff(self, pool: Pool[int]) -> Iterator[tuple[int, float]]:
        """Zones of a pool in which nothing yields, with the pressure from which they are stiff.

        What yields only above the set of a relief valve counts for nothing: the valve opens before.
        """
        basins = [self.basins[zone] for zone in pool.zones]
        level = min([pool.pressure_abs_pa, *(basin.opens_abs_pa for basin in basins if basin.held_by is None)])
        if any(basin.held_by is not None and basin.opens_abs_pa <= level for basin in basins):
            return
        if all(self.excess_m3(zone, None) <= _NOTHING_M3 for zone in pool.zones):
            return
        tanks = [tank for basin in basins for tank in basin.tanks.values()]
        if any(tank.opens_abs_pa <= level < tank.full_abs_pa for tank in tanks):
            return
        full = [tank.full_abs_pa for tank in tanks if tank.full_abs_pa <= level]
        for zone in sorted(pool.zones):
            yield zone, max([self.basins[zone].static_abs_pa, *full])

    def excess_m3(self, zone: int, stiff_pa: float | None) -> float:
        """Volume by which a zone's water outgrows its walls, less what has passed into other zones.

        `stiff_pa` is how far above its fill the zone is pressed where it is stiff: water and walls yield to that, and
        walls without a tank grow with warmth. None where it is not: then neither does.
        """
        basin, rise_pa = self.basins[zone], stiff_pa or 0.0
        cold_m3 = basin.unheated.volume_m3 * _squeezed(basin, rise_pa)
        parts = [-self.away_m3.get(zone, 0.0), cold_m3, -basin.unheated.room_m3(rise_k=0.0, rise_pa=rise_pa)]
        for warm in self.warm:
            if zone in warm.masses_kg:
                walls_grow = stiff_pa is not None and not basin.tanks
                rise_k = warm.temperature_k - warm.body.cold_k if walls_grow else 0.0
                parts.append(warm.volume_m3(zone, rise_pa))
                parts.append(-warm.body.shells[zone].room_m3(rise_k=rise_k, rise_pa=rise_pa))
        return math.fsum(parts)

    def _yielding_m3_pa(self, zone: int, rise_pa: float) -> float:
        """Volume by which water and walls of a zone yield to each pascal."""
        basin = self.basins[zone]
        cold = compressibility_per_pa(basin.cold_k, pressure_abs_pa=basin.water_abs_pa(rise_pa))
        parts = [_STIFFEST_M3_PA, basin.unheated.volume_m3 * (cold + basin.unheated.compliance_per_pa)]
        for warm in self.warm:
            if zone in warm.masses_kg:
                shell, pressure = warm.body.shells[zone], warm.body.fill_abs_pa + rise_pa
                yields = compressibility_per_pa(warm.temperature_k, pressure_abs_pa=pressure)
                parts.append(warm.volume_m3(zone, rise_pa) * yields + shell.volume_m3 * shell.compliance_per_pa)
        return math.fsum(parts)


@dataclass(frozen=True, slots=True)
class CoupledStanding:
    """Where zones stand: their pressures, how far a stiff zone is pressed above its fill, the pools that they form."""

    pressures_abs_pa: Mapping[int, float]
    stiff_pa: Mapping[int, float | None]
    pools: tuple[Pool[int], ...]

    def rises_pa(self, zones: Iterable[int]) -> dict[int, float]:
        """How far above the fill the properties of water are taken in some zones."""
        return {zone: self.stiff_pa[zone] or 0.0 for zone in zones}


def _squeezed(basin: Basin, rise_pa: float) -> float:
    """What pressure leaves of a volume of cold water."""
    if basin.unheated.volume_m3 <= 0.0 or rise_pa <= 0.0:
        return 1.0
    at_fill, pressed = (
        specific_volume_m3_kg(basin.cold_k, pressure_abs_pa=basin.water_abs_pa(rise)) for rise in (0.0, rise_pa)
    )
    return pressed / at_fill


def _spring(base_abs_pa: float, yielding_m3_pa: float) -> Tank:
    """A tank that takes so much for each pascal above a pressure: gas so hard pressed that it yields evenly."""
    return Tank(yielding_m3_pa * _SPRING_PA, _SPRING_PA, base_abs_pa, head_pa=base_abs_pa - _SPRING_PA)
