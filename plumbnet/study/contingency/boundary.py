"""Where a layout can be thought cut: tees past which what happens on one side is not felt on the other."""

from collections import defaultdict, deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import ClassVar

from networkx.utils import UnionFind

from plumbnet.layout.model import OUT, Outlet, Part, Role, Source
from plumbnet.network import Network
from plumbnet.network.graphs import Tree, dominators
from plumbnet.network.outlets import pushing_into
from plumbnet.network.piping import POTENTIAL_ROUNDING_PA, Node, Zone, touching
from plumbnet.physics.fluids import ATMOSPHERE_PA

ROOT = ""
"""Stands before all supplies, and for what lies beyond a boundary; no part has this name."""


class Beyond(Part):
    """All that lies beyond a boundary, as what lies on this side of it feels it: a pressure, and perhaps a way out.

    No kind that a file can name. It stands at datum; pressures are gauge.
    """

    kind: ClassVar[str] = "beyond"
    ports: ClassVar[tuple[str, ...]] = (OUT,)
    through: ClassVar[tuple[tuple[str, str], ...]] = ()

    pressure_pa: float
    """Static pressure of the zone at the boundary."""
    cut_in_pa: float
    """The pressure that its pumps let it fall to."""
    usual_pa: float
    """Its pressure with each main as it is as a rule."""
    least_pa: float
    """The lowest that its supplies let it fall to."""
    temperature_k: float
    """Temperature of the coldest supply that reaches it."""
    takes_back: bool
    """Whether a main in that zone takes any amount back at that pressure."""
    feeds_on: bool
    """Whether a supply goes on feeding the zone."""

    def source(self) -> Source:
        """Water at the pressure of the boundary."""
        return Source(
            OUT,
            self.pressure_pa,
            self.cut_in_pa,
            self.temperature_k,
            self.usual_pa,
            self.least_pa,
            feeds_on=self.feeds_on,
        )

    def outlets(self) -> Iterator[Outlet]:
        """The main, where one is freely joined to the boundary."""
        if self.takes_back:
            yield Outlet(OUT, Role.STREET, self.pressure_pa)


_RELIEF = frozenset({Role.SAFETY_RELIEF, Role.EXPANSION_RELIEF})


@dataclass(frozen=True, slots=True)
class Boundary:
    """A tee, the zone it stands in, and what lies beyond it."""

    tee: str
    zone: Zone
    beyond: Beyond


@dataclass(frozen=True)
class Boundaries:
    """Finds the boundaries between a part and every supply.

    Each is a tee that every way of pipes and parts from a supply to the part leads through, so that on the part's
    side there is no supply; and one whose zone is either

    - held: a main is joined to it by free pipe and open valves alone and stands at its static pressure, so that no
      water that comes there raises it; or
    - quiet: no heated water, on neither side, can push into it at any pressure.

    Either way the two sides share nothing but the static pressure there, which comes from beyond, save what
    `Districts` puts together again.  Source: own derivation; the tests hold it against analyses of the whole.
    """

    network: Network
    _known: dict[str, Boundary | None] = field(default_factory=dict)
    _reaching: dict[Zone, tuple[str, ...]] = field(default_factory=dict)

    def above(self, part: str) -> Iterator[Boundary]:
        """The boundaries between a part and every supply, the nearest first."""
        at = self._over.get(part)
        while at is not None and at != ROOT:
            boundary = self._at(at)
            if boundary is not None:
                yield boundary
            at = self._over[at]

    def inside(self, boundary: Boundary, part: str) -> frozenset[str]:
        """Names of all parts on the part's side of a boundary, its tee among them. Linear in their number."""
        inside, queue = {boundary.tee, part}, deque([part])
        while queue:
            for other in self._beside[queue.popleft()]:
                if other not in inside:
                    inside.add(other)
                    queue.append(other)
        return frozenset(inside)

    def is_felt_across(self, zone: Zone) -> bool:
        """Whether a zone has outlets that are felt on both sides of a boundary in it.

        Open ends and expansion relief valves are, and safety relief valves that its static pressure opens.
        """
        return any(
            site.outlet.role in {Role.AIR, Role.EXPANSION_RELIEF}
            or (site.outlet.role is Role.SAFETY_RELIEF and site.opens_pa <= self.network.standing.at(zone))
            for site in self.network.zoning.sites.get(zone, ())
        )

    def heaters_reaching(self, zone: Zone) -> tuple[str, ...]:
        """Heaters whose water can push into a zone, at whatever pressure."""
        if zone not in self._reaching:
            reached = frozenset(pushing_into(self.network.zoning, self.network.standing, [zone]))
            self._reaching[zone] = tuple(
                name for name, own in self._heated_zones.items() if not reached.isdisjoint(own)
            )
        return self._reaching[zone]

    def _at(self, tee: str) -> Boundary | None:
        if tee not in self._known:
            self._known[tee] = self._boundary(tee)
        return self._known[tee]

    def _boundary(self, tee: str) -> Boundary | None:
        """The boundary at a part, if it is one."""
        network, part = self.network, self.network.piping.system.parts[tee]
        if not part.is_fitting or len(part.port_names()) != 1:
            return None
        node = next(network.piping.nodes_of(tee))
        zone, standing = network.zoning.zone_of[node], network.standing
        levels_pa, cold_k = standing.levels_pa(zone), standing.cold_k[zone]
        if levels_pa is None or cold_k is None or zone in standing.cut_off:
            return None
        static_pa, cut_in_pa, usual_pa, least_pa = levels_pa
        held = self._is_held(node, zone)
        if not (held or not self.heaters_reaching(zone)) or cold_k != self._coldest_k:
            return None
        if self.is_felt_across(zone) or self._has_relief(node) or static_pa - network.tops_pa[zone] <= -ATMOSPHERE_PA:
            return None
        beyond = Beyond.model_construct(
            elevation_m=0.0,
            rating_pa=None,
            pressure_pa=static_pa,
            cut_in_pa=cut_in_pa,
            usual_pa=usual_pa,
            least_pa=least_pa,
            temperature_k=cold_k,
            takes_back=held,
            feeds_on=zone in network.fed,
        )
        return Boundary(tee, zone, beyond)

    def _is_held(self, node: Node, zone: Zone) -> bool:
        static_pa = self.network.standing.at(zone)
        return any(
            site.outlet.role is Role.STREET
            and site.opens_pa <= static_pa + POTENTIAL_ROUNDING_PA
            and self._firm[site.node] == self._firm[node]
            for site in self.network.zoning.sites.get(zone, ())
        )

    def _has_relief(self, node: Node) -> bool:
        """Whether a relief valve touches the tee through pipes and fittings alone, and so parts on both its sides."""
        return self._touching[node] in self._relieved

    @cached_property
    def _beside(self) -> Mapping[str, list[str]]:
        """The parts that pipes join to each part; before all of them the supplies."""
        system = self.network.piping.system
        beside: dict[str, list[str]] = defaultdict(list)
        for pipe in system.pipes:
            beside[pipe.start.part].append(pipe.end.part)
            beside[pipe.end.part].append(pipe.start.part)
        beside[ROOT] = [name for name, part in system.parts.items() if part.source() is not None]
        return beside

    @cached_property
    def _over(self) -> Tree[str]:
        """For each part the nearest one that all ways from the supplies to it lead through."""
        return dominators(self._beside, ROOT)

    @cached_property
    def _coldest_k(self) -> float:
        sources = (part.source() for part in self.network.piping.system.parts.values())
        return min((source.temperature_k for source in sources if source is not None), default=0.0)

    @cached_property
    def _heated_zones(self) -> Mapping[str, frozenset[Zone]]:
        """The zones in which each heater's water stands."""
        return {heated.name: frozenset(self.network.zones_of(heated)) for heated in self.network.heated}

    @cached_property
    def _firm(self) -> "UnionFind[Node]":
        """Nodes joined by free pipe and open valves, and by no crossover."""
        piping = self.network.piping
        joined: UnionFind[Node] = UnionFind(range(len(piping.ports)))
        for start, end in [*piping.plain, *((door.start, door.end) for door in piping.doors if door.is_valve)]:
            joined.union(start, end)
        return joined

    @cached_property
    def _touching(self) -> list[int]:
        """The group of each node, where pipes alone join them; a fitting is one node."""
        return touching(self.network.piping)

    @cached_property
    def _relieved(self) -> frozenset[int]:
        """Groups of touching nodes in which a relief valve stands."""
        return frozenset(self._touching[site.node] for site in self.network.sites if site.outlet.role in _RELIEF)
