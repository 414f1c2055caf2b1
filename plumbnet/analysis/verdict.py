"""The answer for one heater: verdict, ladder, what stops it, what it needs."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property

from plumbnet.analysis.broken import Broken, broken_places
from plumbnet.analysis.limits import Limits
from plumbnet.analysis.locking import locked
from plumbnet.analysis.need import ALWAYS, Task, Water, tank_task, waters
from plumbnet.analysis.neighbourhood import Highest, Neighbourhood, Neighbourhoods
from plumbnet.analysis.place import Place, tank_place
from plumbnet.analysis.relieving import relieved_by
from plumbnet.analysis.required_tank import Trial
from plumbnet.analysis.settling import Settling, Share
from plumbnet.analysis.warmth import grows_m3
from plumbnet.layout.part import Role
from plumbnet.network.blocking import Stops
from plumbnet.network.closing import Closings
from plumbnet.network.heated import Heated
from plumbnet.network.ladder import Rung
from plumbnet.network.piping import Node
from plumbnet.network.reach import devices_between
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.physics.histories.peak import History
from plumbnet.physics.water import ATMOSPHERE_PA, OutsideWater, boiling_k
from plumbnet.rules.facts import ROUNDING_PA, HeaterFacts, Limit, Need, PlaceFacts, RungFacts, Verdict
from plumbnet.rules.profile import Profile


@dataclass
class Judge:
    """Answers heater by heater for one network under one profile."""

    network: Network
    profile: Profile
    limits: Limits
    settling: Settling
    neighbourhoods: Neighbourhoods
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
        relieving = self._relieving.get(heated.inlet, ())
        method = heated.source.sizing or self.profile.sizing.value
        neighbourhood = self.neighbourhoods.of(self.network.zoning.zone_of[node])
        return Case(
            self.network, heated, node, self.limits, neighbourhood, self.settling, relieving, method, self._gathered
        )

    @cached_property
    def _relieving(self) -> dict[Node, tuple[str, ...]]:
        """Safety relief valves that only pipes and fittings join to each heater, by its inlet."""
        return relieved_by(self.network)


def judge_of(network: Network, profile: Profile) -> Judge:
    """The judge of a network under a profile; limits and what settles are searched anew."""
    settling = Settling(network)
    return Judge(network, profile, Limits(network, profile), settling, Neighbourhoods(network, settling.loading))


FROM_BEST_TO_WORST = (Verdict.OPEN, Verdict.ON_DEMAND, Verdict.CONTROLLED, Verdict.TRAPPED, Verdict.SEALED)
"""Verdicts in order, the last being that of the greatest danger."""


@dataclass(frozen=True)
class Case:
    """One heater's water in one zone, at a node of it; pressures at datum."""

    network: Network
    heated: Heated
    node: Node
    limits: Limits
    neighbourhood: Neighbourhood
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
            short_m3=self._short_m3 if closed else 0.0,
            need=self.need if closed else None,
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
            limit_at=self.limit.part,
            limit_way=self.limit.way,
            settled_least_pa=None if self.settled_pa is None else self._settled_least_pa - head_pa,
            history=() if self.settled_pa is None else self._told(self.highest.history),
            broken=tuple(map(self._place_facts, self.broken)) if closed else (),
            asked_method="" if self.method == ALWAYS else self.method,
            asked_tank_m3=self._asked_m3 if verdict is Verdict.CONTROLLED else None,
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
        """All heated water that the tank would serve; of a heater that stays cold its own."""
        return self._chosen.task.waters

    def waters_in(self, zones: frozenset[Zone]) -> tuple[Water, ...]:
        """All heated water in zones; gathered once for all heaters there."""
        if zones not in self.gathered:
            self.gathered[zones] = waters(self.network, self.settling.loading.waters(zones))
        return self.gathered[zones]

    @cached_property
    def limit(self) -> Limit:
        """The lowest limit over all that its water can push into, as it counts in this zone."""
        return self.limits.at(self.node)

    @cached_property
    def bound_pa(self) -> float:
        """At or below it a way out holds it open: the limit, or the static pressure where that is higher."""
        return max(self.limit.pressure_pa, self.network.standing.at(self.zone)) + ROUNDING_PA

    @cached_property
    def task(self) -> Task:
        """What a tank for this water is sized for."""
        return self._chosen.task

    @cached_property
    def need(self) -> Need:
        """The tank that this water needs."""
        return self._chosen.need()

    @cached_property
    def _chosen(self) -> Trial:
        """The place where one tank does for most heaters, of those the smallest.

        Looked for beside this heater and beside those whose water it brings too high. It holds all heaters whose water
        comes to it, if a tank there can; else this heater alone.
        """
        if self.verdict not in {Verdict.TRAPPED, Verdict.SEALED}:
            return self._trial(self._places[0], alone=self.heated.is_idle)
        trials = [self._trial(place, alone=False) for place in self._places]
        for tried in (trials, [trial for trial in map(self._alone, trials) if trial is not None]):
            held = [trial for trial in tried if trial.least_m3 is not None]
            if held:
                return min(held, key=lambda trial: (-len(trial.heaters), trial.least_m3))
        return trials[0]

    def _alone(self, trial: Trial) -> Trial | None:
        """The same for this heater alone, if it was for more."""
        return replace(trial, heaters=(self.heated,)) if len(trial.heaters) > 1 else None

    def _trial(self, place: Place, *, alone: bool) -> Trial:
        """A tank at a place, for all heaters whose water comes to it."""
        zones = self._served(place)
        served = {heated.name: heated for zone in sorted(zones) for heated in self.network.heated_in.get(zone, ())}
        served |= {heated.name: heated for heated in self._to_blame(place)}
        if alone:
            served, warmed = {self.heated.name: self.heated}, ((self.heated, piece) for piece in self.heated.pieces)
            task = self._task_at(place, waters(self.network, warmed))
        else:
            task = self._task_at(place, self.waters_in(zones))
        heaters = tuple(served[name] for name in sorted(served))
        loading = self.settling.loading
        return Trial(self.network, self.limits, self.neighbourhood, task, self.method, heaters, loading)

    def _to_blame(self, place: Place) -> Iterator[Heated]:
        """This heater, and others whose water can come to a place and is too much somewhere."""
        zone = self.network.zoning.zone_of[place.node]
        for pusher in self.neighbourhood.pushers(zone):
            for heated in self.network.heated_in.get(pusher, ()):
                if any(broken_places(self.limits, self.neighbourhood, heated.name, heated.inlet)):
                    yield heated
        yield self.heated

    def _task_at(self, place: Place, waters: tuple[Water, ...]) -> Task:
        """The tank's zone may come as high as this one lifts it at its limit."""
        zone, limit_pa = self.network.zoning.zone_of[place.node], self.limit.pressure_pa
        if zone in self.neighbourhood.reach(self.zone):
            limit_pa = self.neighbourhood.lifted_pa(self.zone, zone, limit_pa)
        return tank_task(self.network, place, limit_pa, waters)

    def _served(self, place: Place) -> frozenset[Zone]:
        """Zones whose water would come to a tank at a place."""
        zone, zones = self.network.zoning.zone_of[place.node], self.company.zones
        known = zone in zones or zone in self.neighbourhood.reach(self.zone)
        return self.settling.pushing(zone if known else self.zone, zones, self.limit.pressure_pa)

    @property
    def _short_m3(self) -> float:
        """What finds no room all at once; else what the tank needed has to take in the worst order."""
        return self.company.short_m3 or self._chosen.takes_m3

    @property
    def _asked_m3(self) -> float | None:
        """What the method of the rules asks for, as if no tank were there; None where plain physics is the method."""
        return None if self.method == ALWAYS else self._chosen.asked_m3

    def tried_pa(self, size_m3: float) -> float:
        """What the zone of the tank that is needed comes to, gauge at the tank, with one of some size."""
        return self._chosen.comes_to_pa(size_m3)

    @cached_property
    def _places(self) -> tuple[Place, ...]:
        own = tank_place(self.network, self.heated)
        beyond = (one for place in self.broken for one in self.network.heated_in.get(place.zone, ()))
        others = (tank_place(self.network, one) for one in beyond if one.name != self.heated.name)
        return tuple(dict.fromkeys((own, *others)))

    @cached_property
    def highest(self) -> Highest:
        """What its zone comes to in the worst history."""
        return self.neighbourhood.highest(self.zone)

    @cached_property
    def broken(self) -> tuple[Broken, ...]:
        """Places in reach that its growth helps to bring above their limits."""
        return tuple(broken_places(self.limits, self.neighbourhood, self.heated.name, self.node))

    def _place_facts(self, broken: Broken) -> PlaceFacts:
        """A broken place as a gauge at its own height reads it; where no part sets the limit, at the heater's."""
        piping, limit, top = self.network.piping, broken.limit, self.neighbourhood.highest(broken.zone)
        head_pa = limit.pressure_pa - limit.own_pa if limit.own_pa is not None else self.head_pa
        way = devices_between(self.network.zoning, self.network.standing, self.zone, broken.zone)
        part = limit.part or piping.ports[self.node].part
        levels = (limit.pressure_pa - head_pa, top.pressure_pa - head_pa, top.reached_pa - head_pa)
        return PlaceFacts(part, limit.by, *levels, way, self._told(top.history))

    def _told(self, history: History[Zone]) -> tuple[tuple[str, ...], ...]:
        """A history by the heaters whose water warms, stage by stage."""
        names = (
            tuple(sorted({one.name for zone in stage for one in self.network.heated_in.get(zone, ())}))
            for stage in history
        )
        return tuple(names)

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
        if self.settled_pa is not None and not self.broken:
            return Verdict.CONTROLLED
        return Verdict.TRAPPED if any(rung.role is not Role.TANK for rung in self.rungs) else Verdict.SEALED

    @cached_property
    def settled_pa(self) -> float | None:
        """Pressure in the worst history; None where a safety relief valve lifts or nothing holds it."""
        settled_pa = self.highest.pressure_pa
        held = settled_pa < math.inf and not self.neighbourhood.is_relieved(self.zone)
        if self.way_out is None or self.way_out.opens_pa > self.bound_pa:
            return settled_pa if held else None
        passed_pa = max(self.way_out.opens_pa, self.network.start_pa(self.zone))
        return min(settled_pa, passed_pa) if held else passed_pa

    @property
    def _settled_least_pa(self) -> float:
        """What a history is known to bring it to, where something holds it."""
        return min(self.highest.reached_pa, self.settled_pa or math.inf)

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
