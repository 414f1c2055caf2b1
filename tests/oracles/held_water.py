"""A whole layout as zones, gates and tanks, the limit of each zone, and how high each comes in any order of heating."""

from collections import defaultdict
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property
from math import inf

import networkx as nx

from oracles.heating_orders import Company, Gas, OneWay, State, Vessel
from oracles.standing_water import DRY
from oracles.walking import Site, Step
from oracles.warm_water import AIR_PA, WarmWater
from plumbnet.layout.model.kinds.control import ReliefValve
from plumbnet.layout.model.part import Role
from plumbnet.layout.model.system import End, System

DISTRIBUTION_PA = 80 * 0.45359237 * 9.80665 / 0.0254**2
"""80 psi, the highest pressure where people draw water in general practice."""
RELIEF_SHARE = 0.9
MOST_ORDERED = 4
"""Heated zones of which every order is played."""
MOST_HALVED = 2
PORTIONS = 12
_SAME_PA = 1e-3


class TooMany(ValueError):
    """More heated zones that meet than all orders of which are played."""


@dataclass(frozen=True)
class HeldWater(WarmWater):
    """What holds water, and how high it comes; pressures gauge at datum."""

    system: System
    _levels: dict[tuple[frozenset[int], frozenset[str]], State] = field(default_factory=dict, compare=False, repr=False)

    def own_limit_pa(self, zone: int) -> float:
        """The lowest that a part in a zone bears; infinite where none says."""
        bounds = [inf]
        for name, part in self.system.parts.items():
            drawn = [End(name, port) for port in part.draws_at() if not part.draws_outdoors()]  # exempt, in general
            bounds += [DISTRIBUTION_PA + self.head_pa(port) for port in drawn if self.zone_of[port] == zone]
            if part.rating_pa is not None:
                ports = [End(name, port) for port in part.port_names()]
                bounds += [part.rating_pa + self.head_pa(port) for port in ports if self.zone_of[port] == zone]
            if isinstance(part, ReliefValve) and self.zone_of[End(name, "in")] == zone:  # plugged or not
                share = 1.0 if part.lets_off_growth else RELIEF_SHARE  # that of a safety group is made to open
                bounds.append(share * part.pressure_pa + self.head_pa(End(name, "in")))
        return min(bounds)

    def reach_limit_pa(self, zone: int) -> float:
        """The lowest limit of all that water of a zone can push into, as it counts there; infinite where none is."""
        return min(self._counting_pa(zone), default=inf)

    def _counting_pa(self, start: int) -> Iterator[float]:
        passes_streets = self.is_held(start)
        for zone, way in self._gated_ways(start, (), passes_streets=passes_streets):
            is_street = zone != start and not passes_streets and self.is_held(zone)
            needed_pa = self.reach_limit_pa(zone) if is_street else self.own_limit_pa(zone)
            for gate in reversed(way):
                needed_pa = inf if needed_pa + AIR_PA >= gate.below_abs_pa else needed_pa + gate.opens_pa
            yield needed_pa

    def _gated_ways(
        self, zone: int, way: tuple[OneWay, ...], *, passes_streets: bool
    ) -> Iterator[tuple[int, tuple[OneWay, ...]]]:
        """Every way through gates in their direction that meets no zone twice; none past a street if so asked."""
        yield zone, way
        if self.is_held(zone) and not passes_streets:
            return
        for gate in self._out[zone]:
            if gate.far not in {one.near for one in way}:
                yield from self._gated_ways(gate.far, (*way, gate), passes_streets=passes_streets)

    def sites_in(self, zone: int) -> list[Site]:
        """Outlets of a zone."""
        return [site for site in self.sites if self.zone_of[site.end] == zone]

    def is_held(self, zone: int) -> bool:
        """Whether a way out that stands open keeps a zone as it is, whatever comes."""
        return zone in self._held

    @cached_property
    def _held(self) -> set[int]:
        return {zone for zone in self.ends_in if self._stands_open(zone)}

    def _stands_open(self, zone: int) -> bool:
        static_pa = self.static_pa[self.ends_in[zone][0]]
        ways_out = [site for site in self.sites_in(zone) if site.outlet.role.is_way_out]
        return any(static_pa == DRY or site.opens_pa <= static_pa + _SAME_PA for site in ways_out)

    @cached_property
    def _out(self) -> dict[int, list[OneWay]]:
        """Gates by which water can come from one zone to another."""
        found: dict[int, list[OneWay]] = defaultdict(list)
        for step in self.steps:
            near, far = self.zone_of[step.start], self.zone_of[step.end]
            if near != far and self.floor_pa(step) < inf:
                found[near].append(self._gate(near, far, step))
        return found

    def _gate(self, near: int, far: int, step: Step) -> OneWay:
        below_pa = self.set_pa(step) if step.is_supply else inf
        return OneWay(near, far, self.higher_pa(step), below_pa + AIR_PA)

    @cached_property
    def company(self) -> Company:
        """All zones, and the gates that lead out of those that no open way out holds."""
        gates = [gate for zone, out in self._out.items() if not self.is_held(zone) for gate in out]
        return Company({zone: self._vessel(zone) for zone in self.ends_in}, gates)

    def _vessel(self, zone: int) -> Vessel:
        start, sites = self.start_pa[zone] + AIR_PA, self.sites_in(zone)
        if self.is_held(zone):
            return Vessel(start, 0.0, (), start)
        opens = (site.opens_pa for site in sites if site.outlet.role is not Role.TANK)
        tanks = tuple(self._gas(site) for site in sites if site.outlet.role is Role.TANK)
        return Vessel(start, self.growth_m3[zone], tanks, min(opens, default=inf) + AIR_PA)

    def _gas(self, site: Site) -> Gas:
        cushion = self.system.parts[site.part].cushion()
        assert cushion is not None
        most_m3 = inf if cushion.acceptance_m3 is None else cushion.acceptance_m3
        return Gas(cushion.volume_m3, cushion.precharge_pa + AIR_PA, most_m3, self.head_pa(site.end))

    @cached_property
    def groups(self) -> dict[int, frozenset[int]]:
        """For each zone all whose levels hang together with its own: what heated zones push into, and so on."""
        meeting: nx.Graph[int] = nx.Graph()
        meeting.add_nodes_from(self.ends_in)
        for zone in self.company.heated:
            meeting.add_edges_from((zone, far) for far in self.company.rows(zone))
        return {zone: frozenset(group) for group in nx.connected_components(meeting) for zone in group}

    def level_pa(self, zone: int, cold: frozenset[str] = frozenset()) -> float:
        """The highest that a zone is brought to, with all water cold that some heaters warm. Raises TooMany."""
        key = self.groups[zone], cold & self.heaters_in(zone)
        if key not in self._levels:
            self._levels[key] = highest(self._grouped(*key))
        return self._levels[key][zone] - AIR_PA

    def heaters_in(self, zone: int) -> frozenset[str]:
        """Heaters that warm water in the group of a zone."""
        return frozenset(name for name in self.sources if self.groups[zone] & self.warmed_by(name).keys())

    def _grouped(self, group: Collection[int], cold: frozenset[str]) -> Company:
        vessels = {zone: self.company.vessels[zone] for zone in group}
        warm: dict[int, float] = defaultdict(float)
        for warmest, piece in self.warmest.values():
            if not any(piece.name in self._pieces_of[name] for name in cold):
                warm[self.zone_of[piece.end]] += self.warmth(warmest).growth * piece.volume_m3
        grown = {zone: replace(one, growth_m3=warm[zone]) for zone, one in vessels.items() if not self.is_held(zone)}
        return Company(vessels | grown, [gate for gate in self.company.gates if {gate.near, gate.far} <= set(group)])

    @cached_property
    def _pieces_of(self) -> dict[str, set[str]]:
        return {name: set() if self.is_idle(name) else {one.name for one in self.pieces(name)} for name in self.sources}

    def warmed_by(self, heater: str) -> dict[int, float]:
        """Growth by zone of all water that a heater warms, whatever else warms it too."""
        found: dict[int, float] = defaultdict(float)
        for warmest, piece in self.warmest.values():
            if piece.name in self._pieces_of[heater]:
                found[self.zone_of[piece.end]] += self.warmth(warmest).growth * piece.volume_m3
        return found

    def is_relieved(self, zone: int) -> bool:
        """Whether a zone comes so high that its water leaves, and by safety relief valves alone."""
        lets_go = self.company.lets_go_abs_pa(zone)
        if lets_go == inf or self.level_pa(zone) + AIR_PA < lets_go - 0.5:
            return False
        roles = {site.outlet.role for far in self.company.rows(zone) for site in self._opened(zone, far, lets_go)}
        return Role.SAFETY_RELIEF in roles and not any(role.is_way_out for role in roles)

    def _opened(self, zone: int, far: int, level: float) -> Iterator[Site]:
        """Outlets of a far zone that stand open once a zone stands at a level."""
        vessel = self.company.vessels[far]
        opens = min(row.needs(vessel.lets_go_abs_pa) for row in self.company.rows(zone)[far])
        if vessel.outlet_abs_pa < inf and opens <= level + 0.5:
            yield from (
                site
                for site in self.sites_in(far)
                if site.outlet.role is not Role.TANK and site.opens_pa + AIR_PA <= vessel.lets_go_abs_pa + _SAME_PA
            )


def highest(company: Company) -> State:
    """The highest of every zone in every order, in halves where few are heated, and all together. Raises TooMany."""
    heated = [zone for zone in company.heated if company.lets_go_abs_pa(zone) > company.cold[zone] + _SAME_PA]
    if len(heated) > MOST_ORDERED:
        raise TooMany
    kept = {
        zone: replace(one, growth_m3=one.growth_m3 if zone in heated else 0.0) for zone, one in company.vessels.items()
    }
    rising = replace(company, vessels=kept)
    found = [rising.worst()]
    if 1 < len(heated) <= MOST_HALVED:
        found.append(rising.worst(portions=2))
    if len(heated) > 1:
        found.append(rising.played([heated], PORTIONS))
    return {zone: max(state[zone] for state in found) for zone in company.vessels}
