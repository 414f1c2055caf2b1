"""The answer for one heater: verdict, ladder, what stops it, what it needs."""

from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis.limits import limit_of
from plumbnet.analysis.place import tank_place
from plumbnet.analysis.pool import Pool, grows_m3, start_pa
from plumbnet.layout.part import Role
from plumbnet.network.blocking import Stops
from plumbnet.network.closing import Closings
from plumbnet.network.heated import Heated
from plumbnet.network.ladder import Rung
from plumbnet.network.piping import Node
from plumbnet.network.sides import neighbours
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.physics.tank import NoTank, nominal_size_m3, nominal_sizes, tank_volume_m3
from plumbnet.physics.water import ATMOSPHERE_PA
from plumbnet.rules.facts import HeaterFacts, Limit, Need, RungFacts, Verdict
from plumbnet.rules.profile import Profile

ROUNDING_PA = 1.0
"""Pressures are compared to one pascal, finer than any gauge and coarser than the rounding of unit conversion."""


@dataclass
class Judge:
    """Answers heater by heater for one network under one profile."""

    network: Network
    profile: Profile
    limits: dict[Zone, Limit]
    _pools: dict[Zone, Pool] = field(default_factory=dict)

    def heaters(self) -> tuple[HeaterFacts, ...]:
        """The answer for every heat source, in the order of the file."""
        return tuple(self._answer(heated) for heated in self.network.heated)

    def _answer(self, heated: Heated) -> HeaterFacts:
        limit = limit_of(self.limits, self.network, heated.inlet, self.profile)
        zone = self.network.zoning.zone_of[heated.inlet]
        bound_pa = max(limit.pressure_pa, self.network.standing.at(zone)) + ROUNDING_PA
        if zone not in self._pools:
            self._pools[zone] = Pool(self.network, frozenset(self.network.reach((zone,), bound_pa)), limit.pressure_pa)
        relieving = self._touching.get(heated.inlet, ())
        return _Case(self.network, heated, zone, limit, bound_pa, self._pools[zone], relieving).facts()

    @cached_property
    def _touching(self) -> dict[Node, tuple[str, ...]]:
        """Safety relief valves that only pipes and fittings join to each heater, by its inlet."""
        return relieved_by(self.network)


@dataclass(frozen=True)
class _Case:
    """One heater in its zone; pressures at datum."""

    network: Network
    heated: Heated
    zone: Zone
    limit: Limit
    bound_pa: float
    pool: Pool
    relieved_by: tuple[str, ...]

    def facts(self) -> HeaterFacts:
        """Everything a report says of the heater."""
        network, heated, verdict, head_pa = self.network, self.heated, self.verdict, self.head_pa
        static_pa = network.standing.static_pa[self.zone]
        own_m3 = grows_m3(network, heated, heated.volume_m3)
        closed = verdict in {Verdict.TRAPPED, Verdict.SEALED}
        pooled = closed or verdict is Verdict.CONTROLLED
        return HeaterFacts(
            name=heated.name,
            kind=network.piping.system.parts[heated.name].kind,
            line=network.piping.system.line_of(heated.name),
            verdict=verdict,
            static_pa=None if static_pa is None else static_pa - head_pa,
            limit_pa=self.limit.pressure_pa - head_pa,
            limit_by=self.limit.by,
            cold_k=network.standing.cold_k[self.zone],
            hot_k=heated.source.hot_k,
            heated_volume_m3=heated.volume_m3,
            expansion_m3=own_m3,
            shared_expansion_m3=self.pool.expansion_m3 if pooled else own_m3,
            shares_with=self._others() if pooled else (),
            ladder=tuple(self._rung(rung) for rung in self.rungs),
            stopped_by=Stops(()) if verdict is Verdict.OPEN else network.stops(self.zone, self.bound_pa),
            closes_if_shut=self._closings(),
            loops=tuple(loop.parts for loop in heated.loops),
            settled_pa=None if self.settled_pa is None else self.settled_pa - head_pa,
            short_m3=self.pool.short_m3 if closed else 0.0,
            need=self._need() if closed else None,
            tanks=tuple(self.pool.tanks) if pooled else (),
            is_cut_off=self.zone in network.standing.cut_off,
            on_flow=heated.source.on_flow,
            relieved_by=self.relieved_by,
            vented=self._is_vented(),
            open_by_accident=network.accidents(heated.inlet, self.bound_pa) if verdict is Verdict.OPEN else (),
        )

    @cached_property
    def head_pa(self) -> float:
        """Static head of the heater's height."""
        return self.network.piping.heads_pa[self.heated.inlet]

    @cached_property
    def rungs(self) -> list[Rung]:
        """The zone's ladder, and the heater's own relief valves where the ladder was cut before them."""
        rungs = self.network.ladder(self.zone)
        listed = {rung.site.part for rung in rungs}
        own = (self.network.site_of[name] for name in self.relieved_by if name not in listed)
        return [*rungs, *(Rung(site, site.opens_pa, ()) for site in own)]

    def _others(self) -> tuple[str, ...]:
        return tuple(sorted(other.name for other in self.pool.heaters if other.name != self.heated.name))

    @cached_property
    def way_out(self) -> Rung | None:
        """The first way to the street or to open air."""
        return next((rung for rung in self.rungs if rung.role.is_way_out), None)

    @cached_property
    def verdict(self) -> Verdict:
        """What becomes of the expansion."""
        if self.way_out is not None and self.way_out.opens_pa <= self.bound_pa:
            return Verdict.OPEN
        if self.heated.is_idle:
            return Verdict.ON_DEMAND
        if self.settled_pa is not None and self.settled_pa <= self.limit.pressure_pa + ROUNDING_PA:
            return Verdict.CONTROLLED
        return Verdict.TRAPPED if any(rung.role is not Role.TANK for rung in self.rungs) else Verdict.SEALED

    @cached_property
    def settled_pa(self) -> float | None:
        """Pressure at full temperature; None where a safety relief valve lifts first or nothing holds it."""
        if self.way_out is not None and self.way_out.opens_pa <= self.bound_pa:
            return max(self.way_out.opens_pa, start_pa(self.network, self.zone))
        if self.heated.is_idle:
            return start_pa(self.network, self.zone)
        holding = [rung.opens_pa for rung in self.rungs if rung.role in _HOLDS]
        by_tanks_pa = self.pool.settled_pa()
        holds_pa = min([*holding, *([] if by_tanks_pa is None else [by_tanks_pa])], default=None)
        lifts_pa = min((rung.opens_pa for rung in self.rungs if rung.role is Role.SAFETY_RELIEF), default=None)
        if holds_pa is None or (lifts_pa is not None and holds_pa > lifts_pa):
            return None
        return max(holds_pa, start_pa(self.network, self.zone))

    def _closings(self) -> Closings:
        if self.verdict not in {Verdict.OPEN, Verdict.CONTROLLED}:
            return Closings(())
        return self.network.closings(self.heated.inlet, self.bound_pa)

    def _rung(self, rung: Rung) -> RungFacts:
        way = self.network.way(self.heated.inlet, rung)
        kind = self.network.piping.system.parts[rung.site.part].kind
        return RungFacts(rung.site.part, rung.role, kind, rung.opens_pa - self.head_pa, way)

    def _is_vented(self) -> bool:
        cells = self.network.zoning.cell_of
        return any(rung.role is Role.AIR and cells[rung.site.node] == cells[self.heated.inlet] for rung in self.rungs)

    def _need(self) -> Need:
        place = tank_place(self.network, self.heated)
        head_pa = self.network.piping.heads_pa[place.node]
        charge_pa = start_pa(self.network, self.zone) - head_pa
        tank_m3, nominal_m3 = None, None
        try:
            tank_m3 = tank_volume_m3(
                self.pool.expansion_m3,
                charge_abs_pa=charge_pa + ATMOSPHERE_PA,
                start_abs_pa=charge_pa + ATMOSPHERE_PA,
                end_abs_pa=self.limit.pressure_pa - head_pa + ATMOSPHERE_PA,
            )
        except NoTank:
            pass
        else:
            system = self.network.piping.system
            nominal_m3 = nominal_size_m3(tank_m3, system.tank_sizes_m3 or nominal_sizes(system.units))
        return Need(tank_m3, nominal_m3, charge_pa, place.name)


_HOLDS = frozenset({Role.STREET, Role.AIR, Role.EXPANSION_RELIEF})


def relieved_by(network: Network) -> dict[Node, tuple[str, ...]]:
    """For each heater's inlet the safety relief valves that only pipes and fittings join to its store."""
    parts = network.piping.system.parts
    own = {node: heated for heated in network.heated for node in _store_nodes(network, heated)}
    found: dict[Node, tuple[str, ...]] = {}
    for node, names in neighbours(network.piping, own).items():
        reliefs = {name for name in names if any(o.role is Role.SAFETY_RELIEF for o in parts[name].outlets())}
        inlet = own[node].inlet
        found[inlet] = tuple(sorted({*found.get(inlet, ()), *reliefs}))
    return found


def _store_nodes(network: Network, heated: Heated) -> list[Node]:
    """The ports that open into a heater's store."""
    own = set(network.piping.nodes_of(heated.name))
    return sorted({heated.inlet, *(own & set(network.piping.free[heated.inlet]))})
