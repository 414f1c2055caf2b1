"""A system to everything the graph can say of it, asked in one place, each question searched once and kept."""

import math
from bisect import bisect_right
from collections import deque
from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import ClassVar, TypeAlias

from plumbnet.budgets import Budget
from plumbnet.layout.model import End, Pipe, System, occupied
from plumbnet.network.loops import Circulation, ColdHeaders, HeatedVolume, circulation, heated_volumes
from plumbnet.network.outlets import (
    Climber,
    Closings,
    CutSets,
    IsolationValves,
    Opening,
    Paths,
    Rung,
    Stops,
    accidental_parts,
    closing,
    first_opens_pa,
    floor_pa,
    open_without_accident,
    openings,
    reach,
)
from plumbnet.network.piping import (
    POTENTIAL_ROUNDING_PA,
    Cell,
    Circuits,
    Crossing,
    HeaterSides,
    Node,
    Piping,
    Site,
    Zone,
    Zoning,
    joined_parts,
    piping_of,
    zoning_of,
)
from plumbnet.network.pressure import StaticPressures, levelled, spread_over_zones, standing_pressures

LowestFixture: TypeAlias = tuple[float, str]
"""A fixture by its static head and its name: the lowest, where the pressure is highest, sorts first."""


@dataclass
class Network:
    """The piping of a system with its zones, pressures, loops and heated volumes; pressures at datum.

    Questions that depend on a bound are searched once for all bounds that open the same gates and outlets.
    """

    is_whole: ClassVar[bool] = True
    """Whether everything may be asked of it, also what only a report on it needs."""

    piping: Piping
    zoning: Zoning
    standing: StaticPressures
    openings: dict[Zone, list[Opening]]
    circulation: Circulation
    heated: tuple[HeatedVolume, ...]
    budget: Budget = field(default_factory=Budget)
    """Counts the steps that were spent on histories of heating in it."""
    _ladders: dict[Zone, list[Rung]] = field(default_factory=dict)
    _unbypassed_ladders: dict[Zone, list[Rung]] = field(default_factory=dict)
    _closings: dict[int, IsolationValves] = field(default_factory=dict)
    _unaided: dict[int, set[Cell]] = field(default_factory=dict)
    _places: dict[str, Mapping[Zone, Node]] = field(default_factory=dict)

    def ladder(self, zone: Zone) -> list[Rung]:
        """Outlets that water of a zone can reach, lowest first."""
        if zone not in self._ladders:
            self._ladders[zone] = self._climber.ladder(zone)
        return self._ladders[zone]

    def way(self, start: Node, rung: Rung) -> tuple[str, ...]:
        """Names of the parts on the way from a node to an outlet."""
        return self._ways.to_rung(start, rung)

    def stops(self, zone: Zone, bound_pa: float) -> Stops:
        """What stands against water of a zone on its way out at or below the bound."""
        return self._blocking.stops(zone, bound_pa)

    def closings(self, node: Node, bound_pa: float) -> Closings:
        """Valves whose closing would leave water at a node no outlet or tank at or below the bound."""
        grade = self._grade(bound_pa)
        if grade not in self._closings:
            self._closings[grade] = closing(self.zoning, self.standing, self.openings, bound_pa)
        return self._closings[grade].closings(self.zoning.cell_of[node])

    def reach(self, zones: tuple[Zone, ...], bound_pa: float) -> tuple[Zone, ...]:
        """Zones that water of `zones` can push into at or below the bound."""
        return reach(self.zoning, self.standing, zones, bound_pa)

    def bypasses(self, zone: Zone, bound_pa: float) -> tuple[str, ...]:
        """Reducers whose bypass is all that lets water of a zone out at or below the bound, as they are met."""
        way = _way_out(self.ladder(zone), bound_pa)
        passed = () if way is None else tuple(crossing.part for crossing in way.crossings if crossing.is_bypass)
        if not passed:
            return ()
        if zone not in self._unbypassed_ladders:
            self._unbypassed_ladders[zone] = self._unbypassed.ladder(zone)
        return () if _way_out(self._unbypassed_ladders[zone], bound_pa) else passed

    def accidents(self, node: Node, bound_pa: float) -> tuple[str, ...]:
        """Joints of hot and cold without which water at a node would have no way out; none where it would."""
        if not self._has_accidents:
            return ()
        grade = self._grade(bound_pa)
        if grade not in self._unaided:
            self._unaided[grade] = open_without_accident(self.zoning, self.standing, self.openings, bound_pa)
        if self.zoning.cell_of[node] in self._unaided[grade]:
            return ()
        return accidental_parts(self.zoning, self.zoning.zone_of[node])

    def _grade(self, bound_pa: float) -> int:
        """Number of thresholds at or below a bound: bounds of one grade open the same gates and outlets."""
        return bisect_right(self._thresholds, bound_pa)

    @cached_property
    def circuits(self) -> Circuits:
        """Which water people draw, and which only carries heat."""
        return Circuits(self.piping)

    @cached_property
    def heated_in(self) -> dict[Zone, list[HeatedVolume]]:
        """Heat sources by the zones that hold water they warm with every fixture shut."""
        found: dict[Zone, list[HeatedVolume]] = {}
        for heated in self.heated:
            if not heated.is_idle:
                for zone in sorted({self.zoning.zone_of[piece.node] for piece in heated.pieces}):
                    found.setdefault(zone, []).append(heated)
        return found

    @cached_property
    def cold_headers(self) -> ColdHeaders:
        """The cold piping of each zone, up to its heaters."""
        return ColdHeaders(self.zoning, self.heated)

    def zones_of(self, heated: HeatedVolume) -> tuple[Zone, ...]:
        """Zones that hold water which a heat source warms; its own inlet's first."""
        return tuple(self.places_of(heated))

    def places_of(self, heated: HeatedVolume) -> Mapping[Zone, Node]:
        """The same, each with the first node there at which such water stands."""
        if heated.name not in self._places:
            zone_of, places = self.zoning.zone_of, {self.zoning.zone_of[heated.inlet]: heated.inlet}
            for piece in heated.pieces:
                places.setdefault(zone_of[piece.node], piece.node)
            self._places[heated.name] = places
        return self._places[heated.name]

    def supplies(self, zone: Zone) -> tuple[str, ...]:
        """Supplies whose water comes or once came to a zone, in the order of the file."""
        sources = ((name, part.source()) for name, part in self.piping.system.parts.items())
        nodes = ((name, self.piping.node_of[End(name, source.port)]) for name, source in sources if source is not None)
        starts = ((name, self.zoning.zone_of[node]) for name, node in nodes)
        return tuple(
            name for name, start in starts if zone in spread_over_zones(self.zoning, start, set(), through_shut=True)
        )

    @cached_property
    def fed(self) -> frozenset[Zone]:
        """Zones that a supply goes on feeding: through no shut valve, and not filled once by hand. Linear."""
        seen: set[Zone] = set()
        for name, part in self.piping.system.parts.items():
            source = part.source()
            if source is not None and source.feeds_on:
                start = self.zoning.zone_of[self.piping.node_of[End(name, source.port)]]
                deque(spread_over_zones(self.zoning, start, seen, through_shut=False), maxlen=0)
        return frozenset(seen)

    @cached_property
    def draws(self) -> dict[Zone, list[LowestFixture]]:
        """Where people draw water, in every zone in which water stands, the lowest first."""
        found: dict[Zone, list[LowestFixture]] = {}
        for name, part in self.piping.system.parts.items():
            for port in part.draws_at():
                node = self.piping.node_of[End(name, port)]
                zone = self.zoning.zone_of[node]
                if self.standing.static_pa[zone] is not None:
                    found.setdefault(zone, []).append((self.piping.heads_pa[node], name))
        return {zone: sorted(own) for zone, own in found.items()}

    @cached_property
    def way_out_pa(self) -> dict[Zone, float]:
        """Pressure at which the first way out of each zone that has one opens."""
        return first_opens_pa(self.openings, lambda role: role.is_way_out)

    def neighbours(self, node: Node) -> AbstractSet[str]:
        """The parts that pipes and fittings alone join to a node, its own left out."""
        return self.joined(node) - {self.piping.ports[node].part}

    def joined(self, node: Node) -> frozenset[str]:
        """The same with its own: one and the same set for all nodes that are joined so."""
        return self._joined_parts[node]

    @cached_property
    def _joined_parts(self) -> list[frozenset[str]]:
        return joined_parts(self.piping)

    @cached_property
    def piped(self) -> dict[End, list[End]]:
        """By each connection with pipes the connections at their other ends, in the order of the file."""
        found: dict[End, list[End]] = {}
        for pipe in self.piping.system.pipes:
            found.setdefault(pipe.start, []).append(pipe.end)
            found.setdefault(pipe.end, []).append(pipe.start)
        return found

    @cached_property
    def pipe_between(self) -> dict[frozenset[End], Pipe]:
        """By two connections the pipe that joins them; of several the first in the file."""
        return {frozenset(pipe.ends): pipe for pipe in reversed(self.piping.system.pipes)}

    @cached_property
    def hung_in(self) -> dict[Zone, list[tuple[str, Node]]]:
        """By each zone the sound tanks that hang in it, in the order of the file, with what their pipes lead to."""
        piping, found = self.piping, dict[Zone, list[tuple[str, Node]]]()
        for name, part in piping.system.parts.items():
            cushion = part.cushion()
            for own in piping.nodes_of(name) if cushion is not None and cushion.is_sound else ():
                pipe = self.pipe_at.get(piping.ports[own])
                for node in () if pipe is None else (piping.node_of[end] for end in pipe.ends if end.part != name):
                    found.setdefault(self.zoning.zone_of[node], []).append((name, node))
        return found

    @cached_property
    def sides(self) -> HeaterSides:
        """Which piping is the hot side of heaters and which their cold pipe."""
        return HeaterSides(self.piping, tuple((one.inlet, one.outlet) for one in self.heated))

    @cached_property
    def inlets(self) -> frozenset[Node]:
        """Where water enters heat sources."""
        return frozenset(one.inlet for one in self.heated)

    @cached_property
    def gates_at(self) -> dict[End, list[Crossing]]:
        """By each connection the gates that water there can come to, from either side, those within a zone too."""
        found: dict[End, list[Crossing]] = {}
        for gate in self.piping.gates:
            for crossing in self.zoning.both_ways(gate):
                found.setdefault(self.piping.ports[crossing.leaves], []).append(crossing)
        return found

    @cached_property
    def sites(self) -> tuple[Site, ...]:
        """Every outlet, in the order of the file."""
        return tuple(self.piping.sites())

    @cached_property
    def site_of(self) -> dict[str, Site]:
        """The outlet of each part that has one; of a running fixture, its last."""
        return {site.part: site for sites in self.zoning.sites.values() for site in sites}

    @cached_property
    def pipe_at(self) -> dict[End, Pipe]:
        """The pipe at each port that has one; at a shared port, the last."""
        return occupied(self.piping.system.pipes)

    def start_pa(self, zone: Zone) -> float:
        """Static pressure of a zone at datum; one that no supply reaches is just full, if it does not run out."""
        return self._starts_pa[zone]

    @cached_property
    def _starts_pa(self) -> list[float]:
        """By zone; lowered from gate to gate against their direction."""
        known = enumerate(self.standing.static_pa)
        starts = [self.tops_pa[zone] if static_pa is None else static_pa for zone, static_pa in known]
        queue = deque(range(len(starts)) if None in self.standing.static_pa else ())
        while queue:
            far = queue.popleft()
            for crossing in self.zoning.into.get(far, ()):
                if self.standing.static_pa[crossing.near] is not None or crossing.way is None:
                    continue
                stays_pa = starts[far] + crossing.way.opens_pa
                if starts[far] < crossing.way.below_pa and stays_pa < starts[crossing.near] - POTENTIAL_ROUNDING_PA:
                    starts[crossing.near] = stays_pa
                    queue.append(crossing.near)
        return starts

    @cached_property
    def tops_pa(self) -> list[float]:
        """Pressure at datum that just fills each zone to its highest port."""
        tops = [-math.inf] * self.zoning.zone_count
        for zone, head_pa in zip(self.zoning.zone_of, self.piping.heads_pa, strict=True):
            tops[zone] = max(tops[zone], head_pa)
        return tops

    @cached_property
    def _has_accidents(self) -> bool:
        return any(not door.is_valve for door in self.zoning.piping.doors)

    @cached_property
    def _thresholds(self) -> list[float]:
        floors = {floor_pa(crossing, self.standing) for crossing in self.zoning.cell_crossings()}
        above_static = {
            opening.opens_pa
            for zone, outlets in self.openings.items()
            for opening in outlets
            if opening.opens_pa > self.standing.at(zone)
        }
        return sorted({floor for floor in floors if floor is not None} | above_static)

    @cached_property
    def _climber(self) -> Climber:
        return Climber(self.zoning, self.standing, self.openings)

    @cached_property
    def _unbypassed(self) -> Climber:
        """Finds ladders as if no reducer had a bypass."""
        out = {zone: [one for one in crossings if not one.is_bypass] for zone, crossings in self.zoning.out.items()}
        return Climber(replace(self.zoning, out=out), self.standing, self.openings)

    @cached_property
    def _blocking(self) -> CutSets:
        return CutSets(self.zoning, self.standing, self.openings)

    @cached_property
    def _ways(self) -> Paths:
        return Paths(self.piping)


def _way_out(ladder: list[Rung], bound_pa: float) -> Rung | None:
    """The first way to the street or to open air, if one opens at or below the bound."""
    return next((rung for rung in ladder if rung.role.is_way_out and rung.opens_pa <= bound_pa), None)


def network_of(system: System) -> Network:
    """The network of a system."""
    zoning = zoning_of(piping_of(system))
    zoning, stands = levelled(zoning, standing_pressures(zoning))
    piping, moving = zoning.piping, circulation(zoning.piping)
    return Network(piping, zoning, stands, openings(zoning, stands), moving, heated_volumes(piping, moving.loops))
