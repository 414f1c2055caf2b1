"""Which zones share expansion and tanks, the pressure at which each settles, and which heaters are short of room."""

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

import networkx as nx

from plumbnet.analysis.equilibrium.coupled_zones import coupled_heights, coupled_zones, gate_of, is_held, pushing
from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.piping import Crossing, Potentials, PotentialStep, Zone
from plumbnet.physics.equilibrium import OneWayGate, Pool, ZoneLoad, joined_zones, settle_safely, shortage
from plumbnet.physics.fluids import ATMOSPHERE_PA

_MOST_TRIES = 32
"""Heights tried where none fit all gates."""
_PASSING_PA = 1e-3
"""Water does not pass for so little."""
_ROUNDING = 1e-9
"""Share by which the pressure of a pool may miss that of the outlet that caps it."""


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
class CoupledGroup:
    """Zones that settle together and the gates between them, each zone lifted so that checks open at once.

    The gates `left_out` are those that the lifts do not fit, because others open before them.
    """

    loads: dict[Zone, ZoneLoad]
    gates: list[OneWayGate[Zone]]
    lifts_pa: dict[Zone, float]
    left_out: list[OneWayGate[Zone]] = field(default_factory=list)


@dataclass(frozen=True)
class _Group:
    """The same, settled; `streets` are held by a way out of their own, where their heated water goes and no further.

    `beside` are, for each zone but these, the zones of its pool that it shares water with: not those beyond a street.
    `open` are the gates within pools.
    """

    loads: Mapping[Zone, ZoneLoad]
    gates: list[OneWayGate[Zone]]
    lifts_pa: dict[Zone, float]
    pools: list[Pool[Zone]]
    streets: frozenset[Zone]
    beside: dict[Zone, frozenset[Zone]]
    open: "nx.DiGraph[Zone]"
    shares: dict[frozenset[Zone], Share] = field(default_factory=dict)
    relieved: dict[Zone, bool] = field(default_factory=dict)

    @cached_property
    def pool_of(self) -> dict[Zone, Pool[Zone]]:
        """The pool of each zone."""
        return {zone: pool for pool in self.pools for zone in pool.zones}

    @cached_property
    def into(self) -> dict[Zone, list[Zone]]:
        """The zones from which gates lead into each."""
        found: dict[Zone, list[Zone]] = {}
        for gate in self.gates:
            found.setdefault(gate.far, []).append(gate.near)
        return found


@dataclass
class SharedTanks:
    """Answers for the zones of a network, each group of zones settled once. Pressures are gauge, at datum."""

    network: Network
    _group_of: dict[Zone, _Group] = field(default_factory=dict)

    @cached_property
    def loading(self) -> ZoneLoads:
        """What each zone has to take up."""
        return ZoneLoads(self.network)

    def share(self, zone: Zone, short_m3: float = 0.0) -> Share:
        """What settles together with a zone, and what of it finds no room."""
        group = self._group(zone)
        zones = group.beside[zone]
        if zones not in group.shares:
            heaters = sorted(heated.name for heated in self.loading.heaters(zones))
            growth_m3 = math.fsum(group.loads[each].expansion_m3 for each in zones)
            tanks = sorted(name for each in zones for name in self.loading.tanks_in.get(each, ()))
            group.shares[zones] = Share(zones, tuple(heaters), growth_m3, tuple(tanks))
        return replace(group.shares[zones], short_m3=short_m3)

    def shortage(self, zone: Zone, limit_pa: float) -> Share:
        """What finds no room together with a zone if nothing may pass a limit, and no safety relief valve lift."""
        group, pool = self._group(zone), self._pool(zone)
        level = limit_pa + ATMOSPHERE_PA + group.lifts_pa[zone]
        if self._is_relieved(zone):
            level = min(level, pool.pressure_abs_pa)
        elif pool.pressure_abs_pa <= level:
            return self.share(zone)
        return self.share(zone, shortage(group.loads, group.beside[zone], level).short_m3)

    def joined(self, zone: Zone) -> CoupledGroup:
        """What settles together with a zone, before any of it is warm.

        Where no heights fit all gates, some are left out, and others in their place if water would then have to pass
        one of those. Once it need not, all settles as if none were left out: the others only bound it further.
        """
        zones, crossings = coupled_zones(self.network, zone)
        first: list[tuple[Zone, Zone]] = []
        for _ in range(_MOST_TRIES):
            found = coupled_heights(self.network, zones, crossings, first)
            whole = self._lifted(zones, crossings, found)
            if not found.left_out:
                break
            group = self._settled(zone, whole)
            passed = [step.pair for step in found.left_out if _passes(group, step)]
            if not passed:
                break
            first = [*passed, *first]
        return whole

    def _lifted(self, zones: Collection[Zone], crossings: Iterable[Crossing], found: Potentials) -> CoupledGroup:
        """Zones lifted by heights that fit most gates, and by so much more that none stands below the air at datum."""
        lowest_pa = min(self.network.start_pa(zone) + lift_pa for zone, lift_pa in found.lifts_pa.items())
        lifts = {zone: lift_pa + max(0.0, -lowest_pa) for zone, lift_pa in found.lifts_pa.items()}
        left_out = {step.pair for step in found.left_out}
        whole = CoupledGroup({member: self.loading.load(member, lifts[member]) for member in sorted(zones)}, [], lifts)
        for crossing in crossings:
            gates = whole.left_out if (crossing.near, crossing.far) in left_out else whole.gates
            gates.append(gate_of(self.network, crossing, lifts[crossing.far]))
        return whole

    def pushing(self, zone: Zone, zones: Collection[Zone], limit_pa: float) -> frozenset[Zone]:
        """Zones whose water would come to one of them if that one stood at a limit, itself included.

        Looked for among some zones and all that settle above the limit; beyond a reducer that shuts, among all.
        """
        group = self._group(zone)
        level = limit_pa + ATMOSPHERE_PA + group.lifts_pa[zone]
        found = pushing(zone, lambda each: each in zones or group.pool_of[each].pressure_abs_pa > level, group.into)
        passed = any(group.loads[each].pushed_m3 > 0.0 for each in found)
        return pushing(zone, lambda _: True, group.into) if passed else found

    def _pool(self, zone: Zone) -> Pool[Zone]:
        return self._group(zone).pool_of[zone]

    def _is_relieved(self, zone: Zone) -> bool:
        """Whether water leaves its pool, and that of a zone has only safety relief valves to go to, and no way out."""
        group = self._group(zone)
        if zone not in group.relieved:
            group.relieved[zone] = self._is_let_off(group, zone)
        return group.relieved[zone]

    def _is_let_off(self, group: _Group, zone: Zone) -> bool:
        pool = group.pool_of[zone]
        if pool.discharged_m3 <= 0.0:
            return False
        most_pa = pool.pressure_abs_pa * (1.0 + _ROUNDING) - ATMOSPHERE_PA
        beyond = sorted(nx.descendants(group.open, zone) | {zone})
        opened = {role for each in beyond for role in self.loading.opened(each, most_pa - group.lifts_pa[each])}
        return Role.SAFETY_RELIEF in opened and not any(role.is_way_out for role in opened)

    def _group(self, zone: Zone) -> _Group:
        if zone not in self._group_of:
            group = self._settled(zone, self.joined(zone))
            self._group_of |= dict.fromkeys(group.loads.keys() - group.streets, group)
        return self._group_of[zone]

    def _settled(self, zone: Zone, whole: CoupledGroup) -> _Group:
        streets = frozenset(member for member in whole.loads if member != zone and is_held(self.network, member))
        kept = {member: replace(whole.loads[member], expansions_m3={}) for member in streets}
        settled = settle_safely(whole.loads | kept, whole.gates)
        gates = [*whole.gates, *whole.left_out]
        pool_of = {member: number for number, pool in enumerate(settled.pools) for member in pool.zones}
        within = [gate for gate in settled.gates if pool_of[gate.near] == pool_of[gate.far]]
        beside = {each: part for part in joined_zones(sorted(pool_of.keys() - streets), within) for each in part}
        opened: nx.DiGraph[Zone] = nx.DiGraph((gate.near, gate.far) for gate in within)
        opened.add_nodes_from(pool_of)
        return _Group(settled.loads, gates, whole.lifts_pa, settled.pools, streets, beside, opened)


def _passes(group: _Group, step: PotentialStep) -> bool:
    """Whether water would have to pass from one zone to another as they have settled."""
    level = {zone: pool.pressure_abs_pa - group.lifts_pa[zone] for pool in group.pools for zone in pool.zones}
    shuts_pa = max(gate.below_abs_pa for gate in group.gates if (gate.near, gate.far) == step.pair)
    near_pa, far_pa = level[step.near], level[step.far]
    return near_pa > far_pa + step.higher_pa + _PASSING_PA and far_pa + group.lifts_pa[step.far] < shuts_pa
