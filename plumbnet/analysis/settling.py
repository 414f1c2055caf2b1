"""Which zones share expansion and tanks, the pressure at which each settles, and which heaters are short of room."""

import math
from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

from plumbnet.analysis.shells import Water, standing_water
from plumbnet.analysis.together import Heights, Step, gate_of, heights, is_held, pushing, together
from plumbnet.layout.kinds.supplies import COLD_SUPPLY_K
from plumbnet.layout.part import Role
from plumbnet.network.heated import Heated, Piece
from plumbnet.network.ladder import Opening
from plumbnet.network.whole import Network
from plumbnet.network.zones import Crossing, Zone
from plumbnet.physics import glycol
from plumbnet.physics.expansion import growth
from plumbnet.physics.glycol import GlycolMissing, OutsideGlycol
from plumbnet.physics.settle import OneWayGate, Pool, ZoneLoad, settle_safely, shortage
from plumbnet.physics.tank import Tank
from plumbnet.physics.water import ATMOSPHERE_PA, OutsideWater

_MOST_TRIES = 32
"""Heights tried where none fit all gates."""
_PASSING_PA = 1e-3
"""Water does not pass for so little."""
_ROUNDING = 1e-9
"""Share by which the pressure of a pool may miss that of the outlet that caps it."""


class Unanswerable(ValueError):
    """A heater of which nothing can be computed; `heater` names it, the text says why."""

    def __init__(self, heater: str, text: str) -> None:
        super().__init__(text)
        self.heater = heater


@dataclass(frozen=True, slots=True)
class Share:
    """Zones whose heated water meets the same tanks.

    `heaters` warm it, `expansion_m3` is its growth, `tanks` stand in its zones, `short_m3` of it finds no room.
    """

    zones: frozenset[Zone]
    heaters: tuple[str, ...]
    expansion_m3: float
    tanks: tuple[str, ...]
    short_m3: float = 0.0


@dataclass(frozen=True, slots=True)
class Joined:
    """Zones that settle together and the gates between them, each zone lifted so that checks open at once.

    The gates `left_out` are those that the lifts do not fit, because others open before them.
    """

    loads: dict[Zone, ZoneLoad]
    gates: list[OneWayGate[Zone]]
    lifts_pa: dict[Zone, float]
    left_out: list[OneWayGate[Zone]] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _Group:
    """The same, settled; `streets` are held by a way out of their own, where their heated water goes and no further."""

    loads: Mapping[Zone, ZoneLoad]
    gates: list[OneWayGate[Zone]]
    lifts_pa: dict[Zone, float]
    pools: list[Pool[Zone]]
    streets: frozenset[Zone]


@dataclass
class Settling:
    """Answers for the zones of a network, each group of zones settled once. Pressures are gauge, at datum."""

    network: Network
    _group_of: dict[Zone, _Group] = field(default_factory=dict)

    def settled_pa(self, zone: Zone) -> float | None:
        """Pressure of a zone at full temperature; None where a safety relief valve lifts or nothing holds it."""
        pool, group = self._pool(zone), self._group(zone)
        if pool.pressure_abs_pa == math.inf or self._is_relieved(group, pool):
            return None
        if pool.pressure_abs_pa <= group.loads[zone].static_abs_pa:
            return self.network.start_pa(zone)
        return pool.pressure_abs_pa - ATMOSPHERE_PA - group.lifts_pa[zone]

    def waters(self, zones: Collection[Zone]) -> Iterator[tuple[Heated, Piece]]:
        """Heated water in zones piece by piece, each with the heat source that warms it most."""
        for zone in sorted(zones):
            yield from self._warmed_in.get(zone, ())

    def tanks(self, zones: Collection[Zone]) -> Iterator[tuple[str, Tank]]:
        """Sound tanks in zones, by name."""
        for zone in sorted(zones):
            for name in self._tanks_in.get(zone, ()):
                yield name, self._tank(name, zone)

    def share(self, zone: Zone) -> Share:
        """What settles together with a zone."""
        return self._share(self._group(zone), self._pool(zone).zones)

    def shortage(self, zone: Zone, limit_pa: float) -> Share:
        """What finds no room together with a zone if nothing may pass a limit, and no safety relief valve lift."""
        group, pool = self._group(zone), self._pool(zone)
        level = limit_pa + ATMOSPHERE_PA + group.lifts_pa[zone]
        if self._is_relieved(group, pool):
            level = min(level, pool.pressure_abs_pa)
        elif pool.pressure_abs_pa <= level:
            return self.share(zone)
        return self._share(group, pool.zones, shortage(group.loads, pool.zones, level).short_m3)

    @cached_property
    def water(self) -> Water:
        """All water of the system, and its walls."""
        return standing_water(self.network)

    def joined(self, zone: Zone) -> Joined:
        """What settles together with a zone, before any of it is warm.

        Where no heights fit all gates, some are left out, and others in their place if water would then have to pass
        one of those. Once it need not, all settles as if none were left out: the others only bound it further.
        """
        zones, crossings = together(self.network, zone)
        first: list[tuple[Zone, Zone]] = []
        for _ in range(_MOST_TRIES):
            found = heights(self.network, zones, crossings, first)
            whole = self._lifted(zones, crossings, found)
            passed = [step.pair for step in found.left_out if _passes(self._settled(zone, whole), step)]
            if not passed:
                break
            first = [*passed, *first]
        return whole

    def _lifted(self, zones: Collection[Zone], crossings: Iterable[Crossing], found: Heights) -> Joined:
        """Zones lifted by heights that fit most gates, and by so much more that none stands below the air at datum."""
        lowest_pa = min(self.network.start_pa(zone) + lift_pa for zone, lift_pa in found.lifts_pa.items())
        lifts = {zone: lift_pa + max(0.0, -lowest_pa) for zone, lift_pa in found.lifts_pa.items()}
        left_out = {step.pair for step in found.left_out}
        whole = Joined({member: self._load(member, lifts[member]) for member in sorted(zones)}, [], lifts)
        for crossing in crossings:
            gates = whole.left_out if (crossing.near, crossing.far) in left_out else whole.gates
            gates.append(gate_of(crossing, lifts[crossing.far]))
        return whole

    def pushing(self, zone: Zone, zones: Collection[Zone], limit_pa: float) -> frozenset[Zone]:
        """Zones whose water would come to one of them if that one stood at a limit, itself included.

        Looked for among some zones and all that settle above the limit; beyond a reducer that shuts, among all.
        """
        group = self._group(zone)
        level = limit_pa + ATMOSPHERE_PA + group.lifts_pa[zone]
        high = {each for pool in group.pools if pool.pressure_abs_pa > level for each in pool.zones}
        found = pushing(zone, high.union(zones), group.gates)
        passed = any(group.loads[each].pushed_m3 > 0.0 for each in found)
        return pushing(zone, group.loads.keys(), group.gates) if passed else found

    def _pool(self, zone: Zone) -> Pool[Zone]:
        return next(pool for pool in self._group(zone).pools if zone in pool.zones)

    def _is_relieved(self, group: _Group, pool: Pool[Zone]) -> bool:
        """Whether the pool settles only because a safety relief valve discharges, and not a way out beside it."""
        if pool.discharged_m3 <= 0.0:
            return False
        most_pa = pool.pressure_abs_pa * (1.0 + _ROUNDING) - ATMOSPHERE_PA
        opened = {role for zone in pool.zones for role in self._opened(zone, most_pa - group.lifts_pa[zone])}
        return Role.SAFETY_RELIEF in opened and not any(role.is_way_out for role in opened)

    def _opened(self, zone: Zone, pressure_pa: float) -> Iterator[Role]:
        """Roles of the outlets of a zone that have opened at a pressure; tanks apart."""
        for opening in self._letting_out.get(zone, ()):
            if opening.opens_pa > pressure_pa:
                return
            yield opening.site.outlet.role

    @cached_property
    def _letting_out(self) -> dict[Zone, list[Opening]]:
        """Outlets of every zone that are no tanks, the lowest first."""
        openings = self.network.openings.items()
        return {zone: [one for one in own if one.site.outlet.role is not Role.TANK] for zone, own in openings}

    def _share(self, group: _Group, pool: frozenset[Zone], short_m3: float = 0.0) -> Share:
        zones = pool - group.streets
        heaters = {heated.name for zone in zones for heated in self.network.heated_in.get(zone, ())}
        growth_m3 = math.fsum(group.loads[zone].expansion_m3 for zone in zones)
        tanks = sorted(name for zone in zones for name in self._tanks_in.get(zone, ()))
        return Share(zones, tuple(sorted(heaters)), growth_m3, tuple(tanks), short_m3)

    def _group(self, zone: Zone) -> _Group:
        if zone not in self._group_of:
            group = self._settled(zone, self.joined(zone))
            self._group_of |= dict.fromkeys(group.loads.keys() - group.streets, group)
        return self._group_of[zone]

    def _settled(self, zone: Zone, whole: Joined) -> _Group:
        streets = frozenset(member for member in whole.loads if member != zone and is_held(self.network, member))
        kept = {member: replace(whole.loads[member], expansions_m3={}) for member in streets}
        settled = settle_safely(whole.loads | kept, whole.gates)
        return _Group(settled.loads, [*whole.gates, *whole.left_out], whole.lifts_pa, settled.pools, streets)

    def _load(self, zone: Zone, lift_pa: float = 0.0) -> ZoneLoad:
        letting_out = self._letting_out.get(zone)
        return ZoneLoad(
            self._expansions.get(zone, {}),
            self.network.start_pa(zone) + ATMOSPHERE_PA + lift_pa,
            tuple(self._tank(name, zone, lift_pa) for name in self.takers_in(zone)),
            (letting_out[0].opens_pa if letting_out else math.inf) + ATMOSPHERE_PA + lift_pa,
        )

    def takers_in(self, zone: Zone) -> Sequence[str]:
        """Sound tanks of a zone, in the order in which its load has them; none where it is held and never rises."""
        return () if is_held(self.network, zone) else self._tanks_in.get(zone, ())

    @cached_property
    def _tanks_in(self) -> dict[Zone, list[str]]:
        """Sound tanks of every zone, by name."""
        found: dict[Zone, list[str]] = defaultdict(list)
        for zone, sites in self.network.zoning.sites.items():
            for name in sorted(site.part for site in sites if site.outlet.role is Role.TANK):
                found[zone].append(name)
        return found

    def _tank(self, name: str, zone: Zone, lift_pa: float = 0.0) -> Tank:
        cushion = self.network.piping.system.parts[name].cushion()
        if cushion is None:
            raise TypeError(f"{name} is an outlet of the role tank, but no tank")
        return Tank(
            cushion.volume_m3,
            cushion.precharge_pa + ATMOSPHERE_PA,
            self.network.start_pa(zone) + ATMOSPHERE_PA + lift_pa,
            cushion.acceptance_m3,
            self.network.piping.heads_pa[next(self.network.piping.nodes_of(name))] + lift_pa,
        )

    @cached_property
    def _expansions(self) -> dict[Zone, dict[str, float]]:
        """Growth in each zone by heater."""
        growths: dict[Zone, dict[str, float]] = defaultdict(lambda: defaultdict(float))
        for heated, piece in self._warmed.values():
            zone = self.network.zoning.zone_of[piece.node]
            growths[zone][heated.name] += grows_m3(self.network, heated, piece.volume_m3)
        return growths

    @cached_property
    def _warmed_in(self) -> dict[Zone, list[tuple[Heated, Piece]]]:
        """The same, by the zone in which it stands."""
        found: dict[Zone, list[tuple[Heated, Piece]]] = defaultdict(list)
        for heated, piece in self._warmed.values():
            found[self.network.zoning.zone_of[piece.node]].append((heated, piece))
        return found

    @cached_property
    def _warmed(self) -> dict[str, tuple[Heated, Piece]]:
        """Heated water by name; what several warm counts once, for the one that warms it most."""
        warmest: dict[str, tuple[float, Heated, Piece]] = {}
        for heated in self.network.heated:
            for piece in () if heated.is_idle else heated.pieces:
                growth_m3 = grows_m3(self.network, heated, piece.volume_m3)
                if piece.name not in warmest or growth_m3 > warmest[piece.name][0]:
                    warmest[piece.name] = (growth_m3, heated, piece)
        return {name: (heated, piece) for name, (_, heated, piece) in warmest.items()}


def _passes(group: _Group, step: Step) -> bool:
    """Whether water would have to pass from one zone to another as they have settled."""
    level = {zone: pool.pressure_abs_pa - group.lifts_pa[zone] for pool in group.pools for zone in pool.zones}
    shuts_pa = max(gate.below_abs_pa for gate in group.gates if (gate.near, gate.far) == step.pair)
    near_pa, far_pa = level[step.near], level[step.far]
    return near_pa > far_pa + step.higher_pa + _PASSING_PA and far_pa + group.lifts_pa[step.far] < shuts_pa


def grows_m3(network: Network, heated: Heated, volume_m3: float) -> float:
    """Growth of a volume that a heat source warms, from the coldest supply of its zone to its setpoint.

    Raises Unanswerable where the properties of what it warms are not known at these temperatures.
    """
    try:
        return volume_m3 * _growth(network, heated)
    except (GlycolMissing, OutsideGlycol, OutsideWater) as error:
        raise Unanswerable(heated.name, str(error)) from error


def _growth(network: Network, heated: Heated) -> float:
    zone, mixture = network.zoning.zone_of[heated.inlet], heated.source.mixture
    if mixture is not None:
        return glycol.growth(mixture.glycol, mixture.share, cold_k(network, zone), heated.source.hot_k)
    return growth(cold_k(network, zone), heated.source.hot_k, pressure_abs_pa=heated_abs_pa(network, heated))


def heated_abs_pa(network: Network, heated: Heated) -> float:
    """Static pressure at a heat source, absolute, at its own height."""
    at_datum_pa = network.start_pa(network.zoning.zone_of[heated.inlet])
    return at_datum_pa - network.piping.heads_pa[heated.inlet] + ATMOSPHERE_PA


def cold_k(network: Network, zone: Zone) -> float:
    """Temperature at which a zone was filled; the usual one where no supply reaches it."""
    cold = network.standing.cold_k[zone]
    return COLD_SUPPLY_K if cold is None else cold
