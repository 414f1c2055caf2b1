"""The answer for one heater: verdict, ladder, what stops it, what it needs."""

from dataclasses import dataclass, field, replace
from functools import cached_property

from plumbnet.analysis.limits import limit_of, limits
from plumbnet.analysis.locking import locked
from plumbnet.analysis.need import Task, Water, need, tank_task, waters
from plumbnet.analysis.relieving import relieved_by
from plumbnet.analysis.settling import Settling, Share
from plumbnet.analysis.warmth import grows_m3
from plumbnet.layout.part import Role
from plumbnet.network.blocking import Stops
from plumbnet.network.closing import Closings
from plumbnet.network.heated import Heated
from plumbnet.network.ladder import Rung
from plumbnet.network.piping import Node
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.physics.water import ATMOSPHERE_PA, OutsideWater, boiling_k
from plumbnet.rules.facts import ROUNDING_PA, HeaterFacts, Limit, Need, RungFacts, Verdict
from plumbnet.rules.profile import Profile


@dataclass
class Judge:
    """Answers heater by heater for one network under one profile."""

    network: Network
    profile: Profile
    limits: dict[Zone, Limit]
    settling: Settling
    _gathered: dict[frozenset[Zone], tuple[Water, ...]] = field(default_factory=dict)

    def heaters(self) -> tuple[HeaterFacts, ...]:
        """The answer for every heat source, in the order of the file."""
        return tuple(self.case(heated).facts() for heated in self.network.heated)

    def case(self, heated: Heated) -> "Case":
        """The worst case among the zones in which the heater warms water, of two closed ones that of the lower limit.

        Of equal ones its own zone speaks first, then the first part by name.
        """
        ports, places = self.network.piping.ports, dict[Zone, Node]()
        beyond = sorted((piece.node for piece in heated.pieces), key=lambda node: (ports[node].part, ports[node].port))
        for node in (heated.inlet, *beyond):
            places.setdefault(self.network.zoning.zone_of[node], node)
        cases = [self._case(heated, node) for node in places.values()]
        return max(cases, key=lambda case: (FROM_BEST_TO_WORST.index(case.verdict), -case.limit.pressure_pa))

    def _case(self, heated: Heated, node: Node) -> "Case":
        limit = limit_of(self.limits, self.network, node, self.profile)
        zone = self.network.zoning.zone_of[node]
        bound_pa = max(limit.pressure_pa, self.network.standing.at(zone)) + ROUNDING_PA
        relieving = self._relieving.get(heated.inlet, ())
        method = heated.source.sizing or self.profile.sizing.value
        return Case(self.network, heated, node, limit, bound_pa, self.settling, relieving, method, self._gathered)

    @cached_property
    def _relieving(self) -> dict[Node, tuple[str, ...]]:
        """Safety relief valves that only pipes and fittings join to each heater, by its inlet."""
        return relieved_by(self.network)


def judge_of(network: Network, profile: Profile) -> Judge:
    """The judge of a network under a profile; limits and what settles are searched anew."""
    return Judge(network, profile, limits(network, profile), Settling(network))


FROM_BEST_TO_WORST = (Verdict.OPEN, Verdict.ON_DEMAND, Verdict.CONTROLLED, Verdict.TRAPPED, Verdict.SEALED)
"""Verdicts in order, the last being that of the greatest danger."""


@dataclass(frozen=True)
class Case:
    """One heater's water in one zone, at a node of it; pressures at datum."""

    network: Network
    heated: Heated
    node: Node
    limit: Limit
    bound_pa: float
    settling: Settling
    relieved_by: tuple[str, ...]
    method: str
    gathered: dict[frozenset[Zone], tuple[Water, ...]]

    def facts(self) -> HeaterFacts:
        """Everything a report says of the heater."""
        network, heated, verdict, head_pa = self.network, self.heated, self.verdict, self.head_pa
        static_pa, usual_pa = network.standing.static_pa[self.zone], network.standing.usual_pa[self.zone]
        own_m3 = grows_m3(network, heated, heated.volume_m3)
        closed = verdict in {Verdict.TRAPPED, Verdict.SEALED}
        share, ladder = self.share, tuple(self._rung(rung) for rung in self.rungs)
        return HeaterFacts(
            name=heated.name,
            kind=network.piping.system.parts[heated.name].kind,
            line=network.piping.system.line_of(heated.name),
            verdict=verdict,
            static_pa=None if static_pa is None else static_pa - head_pa,
            usual_pa=None if usual_pa is None else usual_pa - head_pa,
            limit_pa=self.limit.pressure_pa - head_pa,
            limit_by=self.limit.by,
            limit_own_pa=self.limit.own_pa,
            cold_k=network.standing.cold_k[self.zone],
            hot_k=heated.source.hot_k,
            heated_volume_m3=heated.volume_m3,
            expansion_m3=own_m3,
            shared_expansion_m3=own_m3 if share is None else share.expansion_m3,
            shares_with=() if share is None else tuple(name for name in share.heaters if name != heated.name),
            ladder=ladder,
            stopped_by=Stops(()) if verdict is Verdict.OPEN else network.stops(self.zone, self.bound_pa),
            closes_if_shut=self._closings(),
            loops=tuple(loop.parts for loop in heated.loops),
            settled_pa=None if self.settled_pa is None else self.settled_pa - head_pa,
            short_m3=0.0 if share is None else share.short_m3,
            need=self._need() if closed else None,
            locked=locked(network, heated, self.zone, self.rungs, self.settling) if closed else None,
            tanks=() if share is None else share.tanks,
            stands_at=network.piping.ports[self.node].part,
            is_cut_off=self.zone in network.standing.cut_off,
            on_flow=heated.source.on_flow,
            relieved_by=self.relieved_by,
            vented=self._is_vented(),
            open_by_accident=network.accidents(self.node, self.bound_pa) if verdict is Verdict.OPEN else (),
            open_by_bypass=network.bypasses(self.zone, self.bound_pa) if verdict is Verdict.OPEN else (),
            boils_k=self._boils_k(static_pa),
            valves_to_tank=self._valves_to_tank(ladder) if verdict is Verdict.CONTROLLED else (),
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
        beside = (site for site in own if self.network.zoning.zone_of[site.node] == self.zone)
        return [*rungs, *(Rung(site, site.opens_pa, ()) for site in beside)]

    @cached_property
    def zone(self) -> Zone:
        """The zone of this water."""
        return self.network.zoning.zone_of[self.node]

    @cached_property
    def share(self) -> Share | None:
        """What this water shares tanks with; of a trapped heater what is short together; None where it need not."""
        return None if self.verdict in {Verdict.OPEN, Verdict.ON_DEMAND} else self.company

    @cached_property
    def company(self) -> Share:
        """The same, whether or not it needs a tank."""
        if self.verdict in {Verdict.TRAPPED, Verdict.SEALED}:
            return self.settling.shortage(self.zone, self.limit.pressure_pa)
        return self.settling.share(self.zone)

    @cached_property
    def waters(self) -> tuple[Water, ...]:
        """All heated water that one tank would serve; of a heater that stays cold its own."""
        if self.heated.is_idle:
            return waters(self.network, ((self.heated, piece) for piece in self.heated.pieces))
        return self.waters_in(self.served)

    def waters_in(self, zones: frozenset[Zone]) -> tuple[Water, ...]:
        """All heated water in zones; gathered once for all heaters there."""
        if zones not in self.gathered:
            self.gathered[zones] = waters(self.network, self.settling.loading.waters(zones))
        return self.gathered[zones]

    @cached_property
    def served(self) -> frozenset[Zone]:
        """Zones whose water would come to a tank at the heater."""
        own, zones = self.network.zoning.zone_of[self.heated.inlet], self.company.zones
        return self.settling.pushing(own if own in zones else self.zone, zones, self.limit.pressure_pa)

    @cached_property
    def task(self) -> Task:
        """What a tank for this water is sized for."""
        return tank_task(self.network, self.heated, self.zone, self.limit, self.waters)

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
        """Pressure once all water in reach is hot; None where a safety relief valve lifts or nothing holds it."""
        settled_pa = self.settling.settled_pa(self.zone)
        if self.way_out is None or self.way_out.opens_pa > self.bound_pa:
            return settled_pa
        passed_pa = max(self.way_out.opens_pa, self.network.start_pa(self.zone))
        return passed_pa if settled_pa is None else min(settled_pa, passed_pa)

    def _need(self) -> Need:
        heaters = {heated.name for zone in self.served for heated in self.network.heated_in.get(zone, ())}
        return replace(need(self.task, self.method, self.network.piping.system), serves=tuple(sorted(heaters)))

    def _closings(self) -> Closings:
        if self.verdict not in {Verdict.OPEN, Verdict.CONTROLLED}:
            return Closings(())
        return self.network.closings(self.node, self.bound_pa)

    def _rung(self, rung: Rung) -> RungFacts:
        way = self.network.way(self.node, rung)
        kind = self.network.piping.system.parts[rung.site.part].kind
        return RungFacts(rung.site.part, rung.role, kind, rung.opens_pa - self.head_pa, way)

    def _boils_k(self, static_pa: float | None) -> float | None:
        """Where its water boils, under a static pressure at datum."""
        if static_pa is None or self.heated.source.mixture is not None:
            return None
        try:
            return boiling_k(static_pa - self.head_pa + ATMOSPHERE_PA)
        except OutsideWater:
            return None

    def _valves_to_tank(self, ladder: tuple[RungFacts, ...]) -> tuple[str, ...]:
        parts, taking = self.network.piping.system.parts, () if self.share is None else self.share.tanks
        met = (name for rung in ladder if rung.outlet in taking for name in rung.way)
        return tuple(dict.fromkeys(name for name in met if parts[name].is_valve()))

    def _is_vented(self) -> bool:
        cells = self.network.zoning.cell_of
        return any(rung.role is Role.AIR and cells[rung.site.node] == cells[self.heated.inlet] for rung in self.rungs)
