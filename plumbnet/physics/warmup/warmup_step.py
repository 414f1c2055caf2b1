"""A plant at one moment, and the heat of a stretch of time; its state after that.

Water that an outlet lets out in a stretch leaves at its end, as hot as the water is then; that is the only thing
that depends on how long stretches are.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from plumbnet.physics.equilibrium import OneWayGate, Pool
from plumbnet.physics.fluids import specific_volume_m3_kg
from plumbnet.physics.warmup.coupled_pressures import Basin, CoupledStanding, Coupling
from plumbnet.physics.warmup.heated_bodies import Body, Warm, pressed_j
from plumbnet.physics.warmup.warmup_result import Books, Moment

_SETTLED_PA = 1e-3
_MOST_TRIES = 40
_NOTHING_M3 = 1e-13
"""A volume that rounding leaves."""


@dataclass(frozen=True)
class Plant:
    """Zones by number, the gates between them, and the bodies of water that are heated in them."""

    basins: Mapping[int, Basin]
    gates: Sequence[OneWayGate[int]]
    bodies: tuple[Body, ...]

    @property
    def rigid(self) -> "Plant":
        """The same plant with walls that yield to nothing."""
        basins = {zone: basin.rigid for zone, basin in self.basins.items()}
        return Plant(basins, self.gates, tuple(body.rigid for body in self.bodies))

    @property
    def start(self) -> "PlantState":
        """The plant filled and cold, nothing lit."""
        pressures = {zone: basin.static_abs_pa for zone, basin in self.basins.items()}
        mixed = frozenset(body.name for body in self.bodies if body.cold_k >= body.mixed_k)
        warm, away = tuple(body.cold for body in self.bodies), dict.fromkeys(self.basins, 0.0)
        return PlantState(0.0, warm, pressures, away, mixed=mixed)


@dataclass(frozen=True)
class PlantState:
    """The state of a plant.

    `away_m3` is what has passed from each zone into others, or into a street that gives it back. `open` are the
    zones whose outlet stands open, `spilling` those whose outlet had to let water out in the last stretch; `mixed` the
    bodies behind mixing valves that are as warm as these let them be.
    """

    time_s: float
    warm: tuple[Warm, ...]
    pressures_abs_pa: Mapping[int, float]
    away_m3: Mapping[int, float]
    firing: frozenset[str] = frozenset()
    open: frozenset[int] = frozenset()
    spilling: frozenset[int] = frozenset()
    mixed: frozenset[str] = frozenset()
    books: Books = field(default_factory=Books)

    def with_burner(self, name: str, *, lit: bool) -> "PlantState":
        """The same state with a burner lit or out."""
        return replace(self, firing=self.firing | {name} if lit else self.firing - {name})

    def with_mixed(self, body: str) -> "PlantState":
        """The same state with a body as warm as its mixing valve lets it be."""
        return replace(self, mixed=self.mixed | {body})

    def with_open(self, zone: int) -> "PlantState":
        """The same state with the outlet of a zone open."""
        return replace(self, open=self.open | {zone})

    def moment(self, plant: Plant) -> Moment:
        """What is told of this state."""
        taken = {
            name: tank.uptake_m3(self.pressures_abs_pa[zone])
            for zone, basin in plant.basins.items()
            for name, tank in basin.tanks.items()
        }
        temperatures = {warm.body.name: warm.temperature_k for warm in self.warm}
        return Moment(self.time_s, temperatures, self.pressures_abs_pa, self.firing, self.books.lost_m3, taken)


def advanced(plant: Plant, now: PlantState, span_s: float) -> PlantState:
    """The state after a stretch of time in which the same burners fire and the same outlets stand open."""
    return _Stretch(plant, now, span_s, {zone: plant.basins[zone].opens_abs_pa for zone in now.open}).after()


def reseated(plant: Plant, now: PlantState, zones: frozenset[int]) -> PlantState:
    """The state once the open outlets of some zones have let out enough to close."""
    closes = {zone: plant.basins[zone].reseats_abs_pa for zone in zones}
    opens = {zone: plant.basins[zone].opens_abs_pa for zone in now.open - zones}
    return replace(_Stretch(plant, now, 0.0, opens | closes).after(), open=now.open - zones)


@dataclass(frozen=True)
class _Stretch:
    plant: Plant
    now: PlantState
    span_s: float
    open_abs_pa: Mapping[int, float]

    def after(self) -> PlantState:
        """Heat the bodies, find the pressures, let out what must go and let in what is wanting."""
        heats, sheds = self._heats_j(), self._sheds_j()
        warm, standing = self._pressed([heat - shed for heat, shed in zip(heats, sheds, strict=True)])
        books = replace(
            self.now.books,
            heat_j=self.now.books.heat_j + math.fsum(heats),
            shed_j=self.now.books.shed_j + math.fsum(sheds),
            pressed_j=self.now.books.pressed_j + pressed_j(self.now.warm, warm),
        )
        ahead = replace(
            self.now,
            time_s=self.now.time_s + self.span_s,
            warm=tuple(warm),
            pressures_abs_pa=standing.pressures_abs_pa,
            spilling=frozenset(),
            books=books,
        )
        for pool in standing.pools:
            ahead = self._let_out(ahead, pool)
        return self._let_in(self._passed(ahead, standing, _emptied(warm, ahead.warm)), standing)

    def _heats_j(self) -> list[float]:
        """The heat of each body's burners, shared by mass with what is mixed from it as long as that warms with it."""
        bodies = [warm.body for warm in self.now.warm]
        given = [
            self.span_s * math.fsum(one.useful_w for one in body.burners if one.name in self.now.firing)
            for body in bodies
        ]
        place = {body.name: at for at, body in enumerate(bodies)}
        source = [at if body.mixed_from is None else place[body.mixed_from] for at, body in enumerate(bodies)]
        masses = [0.0 if warm.body.name in self.now.mixed else warm.mass_kg for warm in self.now.warm]
        together = [0.0] * len(bodies)
        for of, mass in zip(source, masses, strict=True):
            together[of] += mass
        shares = zip(source, masses, strict=True)
        return [given[of] * (mass / together[of]) if mass else 0.0 for of, mass in shares]

    def _sheds_j(self) -> list[float]:
        bodies = ((warm.body, warm.temperature_k) for warm in self.now.warm)
        return [self.span_s * body.loss_w_k * (temperature_k - body.room_k) for body, temperature_k in bodies]

    def _pressed(self, heats_j: Sequence[float]) -> tuple[list[Warm], CoupledStanding]:
        """Temperatures and pressures that agree.

        Pressing warms water so little that trying each in turn closes in on both, by a factor of twenty each time.
        """
        rises = [dict(warm.rises_pa) for warm in self.now.warm]
        pressures = self.now.pressures_abs_pa
        for _ in range(_MOST_TRIES):
            warm = [one.heated(heat, own) for one, heat, own in zip(self.now.warm, heats_j, rises, strict=True)]
            standing = self._joint(warm, self.now.away_m3).stand(pressures)
            found = [standing.rises_pa(one.masses_kg) for one in warm]
            missed = max((abs(new[zone] - old[zone]) for new, old in zip(found, rises, strict=True) for zone in new))
            rises, pressures = found, standing.pressures_abs_pa
            if missed <= _SETTLED_PA:
                break
        return warm, standing

    def _joint(self, warm: Sequence[Warm], away_m3: Mapping[int, float]) -> Coupling:
        return Coupling(self.plant.basins, self.plant.gates, warm, away_m3, self.open_abs_pa)

    def _let_out(self, ahead: PlantState, pool: Pool[int]) -> PlantState:
        """What an open outlet of a pool lets out, from the bodies of the pool by their share of its warm water."""
        zone = min((zone for zone in pool.zones if zone in self.open_abs_pa), key=self._opening, default=None)
        outlet = None if zone is None else self.plant.basins[zone].outlet
        if zone is None or outlet is None or pool.discharged_m3 <= _NOTHING_M3 or self._is_held(pool):
            return ahead
        leaving = _shared_out(ahead.warm, pool)
        warm, carried = zip(*(one.without(own) for one, own in zip(ahead.warm, leaving, strict=True)), strict=True)
        books = ahead.books
        mass = math.fsum(mass for own in leaving for mass in own.values())
        books = replace(
            books,
            carried_j=books.carried_j + math.fsum(carried),
            lost_kg={**books.lost_kg, outlet.name: books.lost_kg.get(outlet.name, 0.0) + mass},
            lost_m3={**books.lost_m3, outlet.name: books.lost_m3.get(outlet.name, 0.0) + pool.discharged_m3},
        )
        return replace(ahead, warm=warm, books=books, spilling=ahead.spilling | {zone})

    def _opening(self, zone: int) -> tuple[float, int]:
        return self.open_abs_pa[zone], zone

    def _is_held(self, pool: Pool[int]) -> bool:
        """Whether a street or cistern takes up what leaves the pool."""
        holders = (self.plant.basins[zone].held_by for zone in pool.zones)
        return any(outlet is not None and outlet.opens_abs_pa <= pool.pressure_abs_pa for outlet in holders)

    def _passed(self, ahead: PlantState, standing: CoupledStanding, emptied: frozenset[int]) -> PlantState:
        """Book what has passed between the zones of a pool, into a street, and through a zone to its outlet."""
        joint = self._joint(ahead.warm, self.now.away_m3)
        away = dict(self.now.away_m3)
        single = (pool for pool in standing.pools if len(pool.zones) == 1 and not self._is_held(pool))
        alone = {zone for pool in single for zone in pool.zones}
        for zone, basin in self.plant.basins.items():
            if zone not in alone or zone in emptied:
                taken = basin.taken_m3(standing.pressures_abs_pa[zone])
                away[zone] += joint.excess_m3(zone, standing.stiff_pa[zone]) - taken
        return replace(ahead, away_m3=away)

    def _let_in(self, ahead: PlantState, standing: CoupledStanding) -> PlantState:
        """Cold water that comes in from the supply where water shrinks below its fill."""
        held = {zone for pool in standing.pools if self._is_held(pool) for zone in pool.zones}
        joint = self._joint(ahead.warm, ahead.away_m3)
        warm, books = list(ahead.warm), ahead.books
        for zone in self.plant.basins:
            index = next((number for number, one in enumerate(warm) if zone in one.masses_kg), None)
            wanting = -joint.excess_m3(zone, None)
            if index is None or zone in held or wanting <= _NOTHING_M3:
                continue
            one = warm[index]
            mass = wanting / specific_volume_m3_kg(one.body.cold_k, pressure_abs_pa=one.water_abs_pa(zone))
            warm[index], brought = one.fed(zone, mass)
            books = replace(books, fed_kg=books.fed_kg + mass, brought_j=books.brought_j + brought)
        return replace(ahead, warm=tuple(warm), books=books)


def _shared_out(warm: Sequence[Warm], pool: Pool[int]) -> list[dict[int, float]]:
    """Masses that leave each body in each zone for the discharge of a pool: alike of all its warm water.

    Where the pool holds none itself, what it lets out has come from elsewhere, and all warm water gives.
    """
    volumes = [{zone: one.volume_m3(zone) for zone in one.masses_kg if zone in pool.zones} for one in warm]
    if not any(volumes):
        volumes = [{zone: one.volume_m3(zone) for zone in one.masses_kg} for one in warm]
    share = pool.discharged_m3 / math.fsum(volume for own in volumes for volume in own.values())
    return [{zone: share * one.masses_kg[zone] for zone in own} for one, own in zip(warm, volumes, strict=True)]


def _emptied(before: Sequence[Warm], after: Sequence[Warm]) -> frozenset[int]:
    """Zones out of which water has gone."""
    return frozenset(
        zone
        for one, left in zip(before, after, strict=True)
        for zone, mass in one.masses_kg.items()
        if left.masses_kg[zone] < mass
    )
