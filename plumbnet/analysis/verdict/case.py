"""One heater's water in one zone: how high it comes, what opens, and what therefore becomes of its expansion."""

import math
from dataclasses import dataclass
from functools import cached_property
from itertools import islice

from plumbnet.analysis.equilibrium import Highest, LimitBreach, Limits, Neighbourhood, Share, SharedTanks, broken_places
from plumbnet.analysis.required_tank import Gathered, TankChoice
from plumbnet.budgets import MOST_BROKEN
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import MOST_RUNGS, DevicesFrom, Opening, Rung
from plumbnet.network.piping import Node, Zone
from plumbnet.rules.facts import ROUNDING_PA, Limit, Verdict


@dataclass(frozen=True)
class Case:
    """One heater's water in one zone, at a node of it; pressures at datum."""

    network: Network
    heated: HeatedVolume
    node: Node
    limits: Limits
    neighbourhood: Neighbourhood
    settling: SharedTanks
    relieved_by: tuple[str, ...]
    method: str
    gathered: Gathered

    @cached_property
    def head_pa(self) -> float:
        """Static head of the heater's height."""
        return self.network.piping.heads_pa[self.heated.inlet]

    @cached_property
    def rungs(self) -> list[Rung]:
        """The zone's ladder, and the heater's own relief valves where it was cut before: the lowest, as many again."""
        rungs = self.network.ladder(self.zone)
        listed = {rung.site.part for rung in rungs}
        own = (self.network.site_of[name] for name in self.relieved_by if name not in listed)
        beside = [site for site in own if self.network.zoning.zone_of[site.node] == self.zone]
        lowest = sorted(beside, key=lambda site: Opening(site.opens_pa, site).height)[:MOST_RUNGS]
        return [*rungs, *(Rung(site, site.opens_pa, ()) for site in beside if site in lowest)]

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
        if self.is_closed:
            return self.settling.shortage(self.zone, self.limit.pressure_pa)
        return self.settling.share(self.zone)

    @cached_property
    def limit(self) -> Limit:
        """The lowest limit over all that its water can push into, as it counts in this zone."""
        return self.limits.at(self.node)

    @cached_property
    def bound_pa(self) -> float:
        """At or below it a way out holds it open: the limit, or the static pressure where that is higher."""
        return max(self.limit.pressure_pa, self.network.standing.at(self.zone)) + ROUNDING_PA

    @cached_property
    def highest(self) -> Highest:
        """What its zone comes to in the worst history."""
        return self.neighbourhood.highest(self.zone)

    @cached_property
    def broken(self) -> tuple[LimitBreach, ...]:
        """Places in reach that its growth helps to bring above their limits, the nearest, as the budgets say."""
        return self._broken[:MOST_BROKEN]

    @property
    def leaves_broken_out(self) -> bool:
        """Whether it brings more places above their limits than those."""
        return len(self._broken) > MOST_BROKEN

    @cached_property
    def _broken(self) -> tuple[LimitBreach, ...]:
        found = broken_places(self.limits, self.neighbourhood, self.heated.name, self.node)
        return tuple(islice(found, MOST_BROKEN + 1))

    @cached_property
    def beyond(self) -> DevicesFrom:
        """What its water passes on its way to other zones."""
        return DevicesFrom(self.network.zoning, self.network.standing, self.zone)

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
        held = self.neighbourhood.is_held(self.zone)
        if self.way_out is None or self.way_out.opens_pa > self.bound_pa:
            return settled_pa if held else None
        passed_pa = max(self.way_out.opens_pa, self.network.start_pa(self.zone))
        return min(settled_pa, passed_pa) if held else passed_pa

    @property
    def settled_least_pa(self) -> float:
        """What a history is known to bring it to, where something holds it."""
        return min(self.highest.reached_pa, self.settled_pa or math.inf)

    @property
    def is_closed(self) -> bool:
        """Whether its expansion has nowhere to go below the limit."""
        return self.verdict in {Verdict.TRAPPED, Verdict.SEALED}

    @cached_property
    def tank(self) -> TankChoice:
        """The tank that would hold it, and where."""
        return TankChoice(
            network=self.network,
            limits=self.limits,
            neighbourhood=self.neighbourhood,
            settling=self.settling,
            heated=self.heated,
            zone=self.zone,
            limit_pa=self.limit.pressure_pa,
            company=self.company,
            broken=self.broken if self.is_closed else (),
            is_wanted=self.is_closed,
            method=self.method,
            gathered=self.gathered,
        )
