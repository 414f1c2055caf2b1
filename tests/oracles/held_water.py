"""The limit of each zone, and a whole layout as the zones, gates and tanks in which its heated water settles."""

from dataclasses import dataclass
from functools import cached_property

from oracles.pooled_water import Basin, Cushioned, Passing, Rest, at_rest
from oracles.standing_water import DRY
from oracles.walking import Site, Step
from oracles.warm_water import AIR_PA, WarmWater
from oracles.ways_out import takes_from_pa
from plumbnet.layout.kinds.control import ReliefValve
from plumbnet.layout.part import Role
from plumbnet.layout.system import End

DISTRIBUTION_PA = 80 * 0.45359237 * 9.80665 / 0.0254**2
"""80 psi, the highest pressure where people draw water in general practice."""
RELIEF_SHARE = 0.9
_SAME_PA = 1e-3


@dataclass(frozen=True)
class Street:
    """Stands for a zone that an open way out holds at its pressure, as the far side of one gate."""

    number: int
    zone: int


class HeldWater(WarmWater):
    """What holds water, and where it settles; pressures gauge at datum."""

    def limit_pa(self, end: End) -> float:
        """Highest pressure that the zone of a port may reach."""
        bounds = []
        for name, part in self.system.parts.items():
            drawn = [End(name, port) for port in part.draws_at()]
            bounds += [DISTRIBUTION_PA + self.head_pa(port) for port in drawn if self.joins(end, port)]
            if part.rating_pa is not None:
                ports = [End(name, port) for port in part.port_names()]
                bounds += [part.rating_pa + self.head_pa(port) for port in ports if self.joins(end, port)]
            if isinstance(part, ReliefValve) and self.joins(end, End(name, "in")):  # plugged or not
                bounds.append(RELIEF_SHARE * part.pressure_pa + self.head_pa(End(name, "in")))
        return min(bounds, default=DISTRIBUTION_PA + self.head_pa(end))

    def joins(self, one: End, other: End) -> bool:
        """Whether two ports are in one zone."""
        return self.zone_of[one] == self.zone_of[other]

    def sites_in(self, zone: int) -> list[Site]:
        """Outlets of a zone."""
        return [site for site in self.sites if self.zone_of[site.end] == zone]

    def is_held(self, zone: int) -> bool:
        """Whether a way out that stands open keeps a zone as it is, whatever comes."""
        static_pa = self.static_pa[self.ends_in[zone][0]]
        ways_out = [site for site in self.sites_in(zone) if site.outlet.role.is_way_out]
        return any(static_pa == DRY or site.opens_pa <= static_pa + _SAME_PA for site in ways_out)

    @cached_property
    def gates(self) -> list[tuple[int, int, Step]]:
        """Steps by which heated water can come from one zone to another, out of none that is held."""
        found = []
        for step in self.steps:
            near, far = self.zone_of[step.start], self.zone_of[step.end]
            if near != far and self.floor_pa(step) < float("inf") and not self.is_held(near):
                found.append((near, far, step))
        return found

    @cached_property
    def streets(self) -> list[Street]:
        """The far sides of gates that lead to a zone which is held."""
        held = enumerate(far for _, far, _ in self.gates if self.is_held(far))
        return [Street(-1 - number, far) for number, far in held]

    @cached_property
    def rest(self) -> Rest:
        """All zones settled. Raises NoHeights, TooMany."""
        basins = {zone: self._basin(zone) for zone in self.ends_in}
        basins |= {one.number: self._street(one.zone) for one in self.streets}
        streets = iter(self.streets)
        gates = []
        for near, far, step in self.gates:
            beyond = next(streets).number if self.is_held(far) else far
            below = self.set_pa(step) if step.is_supply else float("inf")
            gates.append(Passing(near, beyond, self.higher_pa(step), below + AIR_PA))
        return at_rest(basins, tuple(gates))

    def _basin(self, zone: int) -> Basin:
        opens = (site.opens_pa for site in self.sites_in(zone) if site.outlet.role is not Role.TANK)
        return Basin(
            self.start_pa[zone] + AIR_PA,
            self.growth_m3[zone],
            tuple(self._cushion(site) for site in self.sites_in(zone) if site.outlet.role is Role.TANK),
            min(opens, default=float("inf")) + AIR_PA,
        )

    def _street(self, zone: int) -> Basin:
        start = self.start_pa[zone] + AIR_PA
        return Basin(start, 0.0, (), start)

    def _cushion(self, site: Site) -> Cushioned:
        cushion = self.system.parts[site.part].cushion()
        assert cushion is not None
        most_m3 = cushion.volume_m3 if cushion.acceptance_m3 is None else cushion.acceptance_m3
        charge_abs_pa = cushion.precharge_pa + AIR_PA
        return Cushioned(cushion.volume_m3, charge_abs_pa, most_m3, self.head_pa(site.end))

    def settled_pa(self, zone: int) -> float | None:
        """Pressure of a zone once all is hot; None where nothing holds it but a safety relief valve that lifts."""
        level = self.rest.levels[zone]
        if level == float("inf") or self.is_relieved(zone):
            return None
        return max(level - AIR_PA, self.start_pa[zone])

    def is_relieved(self, zone: int) -> bool:
        """Whether water has to leave the pool of a zone and does so by a safety relief valve alone."""
        members, beyond = self.rest.pool(zone), self.rest.beyond(zone)
        taken = self.pool_takes_m3(members, self.rest.at(zone, self.rest.levels[zone]))
        if any(member < 0 for member in beyond) or self.pool_growth_m3(members) <= taken * (1 + 1e-9):
            return False
        open_roles = {
            site.outlet.role
            for member in beyond
            for site in self.sites_in(member)
            if takes_from_pa(self, site) + AIR_PA <= self.rest.levels[member] + 10 * _SAME_PA
        }
        return Role.SAFETY_RELIEF in open_roles and not any(role.is_way_out for role in open_roles)

    def pool_growth_m3(self, members: set[int]) -> float:
        """What all zones of a pool would have to take up, what came through reducers included."""
        return sum(self.rest.basins[member].growth_m3 for member in members)

    def pool_takes_m3(self, members: set[int], level_abs_pa: float) -> float:
        """What the tanks of a pool take up to a level, in which what checks lose is left out of account."""
        return sum(self.rest.takes_m3(member, level_abs_pa) for member in members)
