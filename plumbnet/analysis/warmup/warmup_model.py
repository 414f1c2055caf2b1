"""A network and one of its heaters to the plant that warms up with it: zones, gates, bodies of water, burners."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from plumbnet.analysis.equilibrium import CoupledGroup, Limits, SharedTanks, cold_k, grows_m3, heated_abs_pa
from plumbnet.analysis.observations import relieved_by
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import Opening
from plumbnet.network.piping import Zone
from plumbnet.physics.equilibrium import ZoneLoad
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import USUAL_BLOWDOWN, Shell, joined_shells
from plumbnet.physics.warmup import Basin, Body, Burner, CoupledOutlet, Plant
from plumbnet.rules import Rules


@dataclass(frozen=True, slots=True)
class Fired:
    """A heater that fires, the body of water that it warms, and its zone."""

    name: str
    body: str
    zone: Zone
    input_w: float
    hot_k: float
    limit_pa: float
    """The highest pressure its zone may reach, gauge at the heater."""


@dataclass(frozen=True)
class WarmupModel:
    """What takes part in a warm-up."""

    rules: Rules
    network: Network
    settling: SharedTanks
    chosen: HeatedVolume

    @cached_property
    def _joint(self) -> tuple[CoupledGroup, tuple[HeatedVolume, ...]]:
        """Zones, gates and heaters that have to do with the chosen heater's water."""
        joint = CoupledGroup({}, [], {})
        heaters: dict[str, HeatedVolume] = {self.chosen.name: self.chosen}
        waiting = list(self.network.zones_of(self.chosen))
        while waiting:
            zone = waiting.pop()
            if zone in joint.loads:
                continue
            more = self.settling.joined(zone)
            joint.loads.update(more.loads)
            joint.gates.extend(gate for gate in more.gates if gate not in joint.gates)
            joint.lifts_pa.update(more.lifts_pa)
            for heated in (one for member in more.loads for one in self.network.heated_in.get(member, ())):
                heaters[heated.name] = heated
                waiting += self.network.zones_of(heated)
        return joint, tuple(heaters.values())

    @property
    def heaters(self) -> tuple[HeatedVolume, ...]:
        """The heaters that fire, the chosen one first."""
        return self._joint[1]

    @cached_property
    def plant(self) -> Plant:
        """The plant as the physics want it."""
        joint, _ = self._joint
        basins = {zone: self._basin(zone, load) for zone, load in sorted(joint.loads.items())}
        return Plant(basins, joint.gates, tuple(body for group in self._together for body in self._bodies(group)))

    @cached_property
    def _together(self) -> list[list[HeatedVolume]]:
        """Heaters by the water they warm together: those that share a piece of it."""
        groups: list[list[HeatedVolume]] = []
        for heated in self.heaters:
            own = {piece.name for piece in heated.pieces}
            meeting = [group for group in groups if any(own & {piece.name for piece in one.pieces} for one in group)]
            groups = [group for group in groups if group not in meeting]
            groups.append([*(one for group in meeting for one in group), heated])
        return groups

    def _bodies(self, group: Sequence[HeatedVolume]) -> Iterator[Body]:
        """The water of some heaters, and what mixing valves temper of it; filled as is that whose water grows most."""
        lead = max(group, key=lambda heated: grows_m3(self.network, heated, 1.0))
        zone, mixed = self.network.zoning.zone_of[lead.inlet], _mixed_names(group)
        body = Body(
            name=lead.name,
            burners=tuple(self._burner(heated) for heated in group),
            shells=self._shells(mixed.pop(None, ()), (zone,)),
            cold_k=cold_k(self.network, zone),
            fill_abs_pa=heated_abs_pa(self.network, lead),
            head_pa=self._head_pa(lead),
            element_k=min(self._elements_k(group), default=math.inf),
            limit_abs_pa=self._limit_pa(lead) + self._lift_pa(zone) + ATMOSPHERE_PA,
        )
        yield body
        for mixed_k, names in mixed.items():
            yield replace(
                body,
                name=self._mixer(group, mixed_k),
                burners=(),
                shells=self._shells(names, ()),
                mixed_from=body.name,
                mixed_k=mixed_k or math.inf,
            )

    def _shells(self, names: Sequence[str], first: Sequence[Zone]) -> dict[Zone, Shell]:
        """The room of pieces of water in each of their zones, and in those that are to stand first."""
        water = self.settling.loading.water.pieces
        zones = dict.fromkeys((*first, *(water[name].zone for name in names)))
        return {zone: joined_shells(water[name].shell for name in names if water[name].zone == zone) for zone in zones}

    def _mixer(self, group: Sequence[HeatedVolume], mixed_k: float | None) -> str:
        """The valve behind which their water comes to a temperature."""
        parts = self.network.piping.system.parts
        looped = {name for heated in group for loop in heated.loops for name in loop.parts}
        return min(name for name in looped if parts[name].tempers_k() == mixed_k)

    @cached_property
    def _limits(self) -> Limits:
        return Limits(self.network, self.rules)

    def _limit_pa(self, heated: HeatedVolume) -> float:
        """The lowest limit in a heater's reach, as it counts in its zone, gauge at datum."""
        return self._limits.at(heated.inlet).pressure_pa

    def _lift_pa(self, zone: Zone) -> float:
        """Head by which a zone is thought higher, so that checks open at once."""
        return self._joint[0].lifts_pa[zone]

    def _head_pa(self, heated: HeatedVolume) -> float:
        """What the pressure of its zone is to be lessened by, for that at the heater."""
        return self.network.piping.heads_pa[heated.inlet] + self._lift_pa(self.network.zoning.zone_of[heated.inlet])

    def _burner(self, heated: HeatedVolume) -> Burner:
        if heated.source.input_w is None:
            raise ValueError(f"{heated.name} has no input")
        return Burner(name=heated.name, input_w=heated.source.input_w, hot_k=heated.source.hot_k)

    def _elements_k(self, group: Sequence[HeatedVolume]) -> Iterator[float]:
        """Temperatures at which relief valves on the heaters open."""
        parts, relieving = self.network.piping.system.parts, relieved_by(self.network)
        for heated in group:
            for name in relieving.get(heated.inlet, ()):
                yield from (outlet.opens_k for outlet in parts[name].outlets() if outlet.opens_k is not None)

    def _basin(self, zone: Zone, load: ZoneLoad) -> Basin:
        outlets = (one for one in self.network.openings.get(zone, ()) if one.site.outlet.role is not Role.TANK)
        basin = Basin(
            static_abs_pa=load.static_abs_pa,
            cold_k=cold_k(self.network, zone),
            outlets=tuple(self._outlet(one, zone) for one in outlets),
            unheated=joined_shells(self.settling.loading.water.beside(self._heated, zone)),
            fill_abs_pa=max(0.0, self.network.start_pa(zone) - self.network.tops_pa[zone]) + ATMOSPHERE_PA,
        )
        named = zip(self.settling.loading.takers_in(zone), load.tanks, strict=True)
        working = {name: tank for name, tank in named if tank.opens_abs_pa < basin.opens_abs_pa}
        return replace(basin, tanks=working)

    @cached_property
    def _heated(self) -> frozenset[str]:
        """Names of all pieces of water that are heated."""
        return frozenset(piece.name for heated in self.heaters for piece in heated.pieces)

    def _outlet(self, opening: Opening, zone: Zone) -> CoupledOutlet:
        site, parts = opening.site, self.network.piping.system.parts
        is_valve = site.outlet.role in {Role.EXPANSION_RELIEF, Role.SAFETY_RELIEF}
        return CoupledOutlet(
            name=site.part,
            opens_abs_pa=opening.opens_pa + self._lift_pa(zone) + ATMOSPHERE_PA,
            blowdown_pa=USUAL_BLOWDOWN * site.outlet.opens_pa if is_valve else 0.0,
            gives_back=site.outlet.role.is_way_out and parts[site.part].source() is not None,
        )

    @property
    def heads_pa(self) -> dict[str, float]:
        """What the pressure of its zone stands above that at each heater, tank and outlet itself."""
        heads, zone_of = self.network.piping.heads_pa, self.network.zoning.zone_of
        sites = (site for zone in self._joint[0].loads for site in self.network.zoning.sites.get(zone, ()))
        found = {site.part: heads[site.node] + self._lift_pa(zone_of[site.node]) for site in sites}
        found |= {body.name: body.head_pa for body in self.plant.bodies}
        return found | {heated.name: self._head_pa(heated) for heated in self.heaters}

    def fired(self) -> Iterator[Fired]:
        """The heaters that fire, the chosen one first."""
        body_of = {burner.name: body.name for body in self.plant.bodies for burner in body.burners}
        for heated in self.heaters:
            yield Fired(
                name=heated.name,
                body=body_of[heated.name],
                zone=self.network.zoning.zone_of[heated.inlet],
                input_w=heated.source.input_w or 0.0,
                hot_k=heated.source.hot_k,
                limit_pa=self._limit_pa(heated) - self.network.piping.heads_pa[heated.inlet],
            )


def _mixed_names(group: Sequence[HeatedVolume]) -> dict[float | None, list[str]]:
    """The pieces of water of some heaters by the most to which a mixing valve lets them come; None: as hot as these.

    What one heater warms unmixed is as hot as that, whatever a valve does behind another.
    """
    hottest_k = max(heated.source.hot_k for heated in group)
    comes_to: dict[str, float | None] = {}
    for piece in (piece for heated in group for piece in heated.pieces):
        mixed_k = None if piece.mixed_k is None or piece.mixed_k >= hottest_k else piece.mixed_k
        known_k = comes_to.get(piece.name, mixed_k)
        comes_to[piece.name] = None if known_k is None or mixed_k is None else max(known_k, mixed_k)
    found: dict[float | None, list[str]] = {}
    for name, mixed_k in comes_to.items():
        found.setdefault(mixed_k, []).append(name)
    return found
