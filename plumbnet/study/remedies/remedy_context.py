"""A report with the network behind it: what a search for remedies asks of a layout."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis import Report
from plumbnet.analysis.equilibrium import Limits
from plumbnet.budgets import Budget
from plumbnet.layout.model import End, Source, System
from plumbnet.layout.units import customary
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import pushing_into
from plumbnet.network.piping import Node, Zone
from plumbnet.physics.vessels import nominal_sizes
from plumbnet.rules import AnswerWord, Severity, answers_of
from plumbnet.rules.facts import TROUBLED, HeaterFacts, TankFacts


@dataclass(frozen=True)
class RemedyContext:
    """A report, and the network it rests on, searched once for all candidates."""

    report: Report
    trials: dict[str, object] = field(default_factory=dict, compare=False, repr=False)
    """What `trial.tried` found already, by the changes; None where they could not be made."""

    budget: Budget = field(default_factory=Budget, compare=False, repr=False)
    """What may be spent on trials: on this layout and on those that come of it, together."""

    @property
    def system(self) -> System:
        """The system of the report."""
        return self.report.system

    @property
    def network(self) -> Network:
        """The network of the system."""
        return self.report.network

    @cached_property
    def heaters(self) -> Mapping[str, HeaterFacts]:
        """The answer for each heater, by its name."""
        return {heater.name: heater for heater in self.report.heaters}

    @cached_property
    def heated(self) -> Mapping[str, HeatedVolume]:
        """What each heater warms, by its name."""
        return {heated.name: heated for heated in self.network.heated}

    @cached_property
    def tanks(self) -> Mapping[str, TankFacts]:
        """The expansion tanks, by name."""
        return {tank.name: tank for tank in self.report.facts.tanks}

    @cached_property
    def met(self) -> frozenset[tuple[str, str]]:
        """Requirements that are met, each by its name with the part that leads the answer."""
        answers = answers_of(self.report.facts, self.report.rules)
        return frozenset((one.rule.name, one.parts[0]) for one in answers if one.word is AnswerWord.MET and one.parts)

    @cached_property
    def sources_in(self) -> Mapping[Zone, Sequence[tuple[End, Source]]]:
        """The supplies in each zone that has any, each by where it gives water, in the order of the file."""
        found: dict[Zone, list[tuple[End, Source]]] = {}
        for name, part in self.system.parts.items():
            source = part.source()
            if source is not None:
                end = End(name, source.port)
                found.setdefault(self.network.zoning.zone_of[self.network.piping.node_of[end]], []).append(
                    (end, source)
                )
        return found

    @cached_property
    def before_tanks(self) -> frozenset[Zone]:
        """Zones whose water can push into one in which a tank stands, that one included."""
        zoning, piping = self.network.zoning, self.network.piping
        tanks = (zoning.zone_of[next(piping.nodes_of(name))] for name in self.tanks)
        return frozenset(pushing_into(zoning, self.network.standing, tanks))

    @property
    def sizes_m3(self) -> tuple[float, ...]:
        """Sizes of tank that can be had, ascending: the author's, or the round series of the file's units."""
        return self.system.tank_sizes_m3 or nominal_sizes(customary(self.system.units))

    def head_pa(self, part: str) -> float:
        """Static head of a part's height: pressure at datum less pressure at the part."""
        return self.network.piping.heads_pa[self.node_of(part)]

    def node_of(self, part: str) -> Node:
        """The node of a part's first connection."""
        return next(self.network.piping.nodes_of(part))

    def limit_at_pa(self, heater: HeaterFacts, node: Node) -> float:
        """The limit of a heater's water as a gauge at `node` would read it."""
        datum_pa = heater.limit_pa + self.network.piping.heads_pa[self.heated[heater.name].inlet]
        return datum_pa - self.network.piping.heads_pa[node]

    def limit_pa(self, zone: Zone) -> float:
        """The lowest limit in reach of a zone, as it counts there, gauge at datum."""
        node = self.network.zoning.zone_of.index(zone)
        return self._limits.at(node).pressure_pa

    def zones_of(self, heater: str) -> tuple[Zone, ...]:
        """Zones that hold water which a heater warms; its own inlet's first."""
        return self.network.zones_of(self.heated[heater])

    def tank_errors(self, heater: str) -> frozenset[str]:
        """Tanks that water of a heater can come to and about which a finding of severity error stands."""
        reached = self.network.reach(self.zones_of(heater), math.inf)
        faulty = {one.parts[0] for one in self.report.findings if one.severity is Severity.ERROR}
        zone_of = self.network.zoning.zone_of
        return frozenset(
            name for name in faulty & self.tanks.keys() if zone_of[next(self.network.piping.nodes_of(name))] in reached
        )

    def is_ailing(self, heater: str) -> bool:
        """Whether a heater needs a remedy: its expansion is not held, or a tank in its reach is at fault."""
        return self.heaters[heater].verdict in TROUBLED or bool(self.tank_errors(heater))

    @cached_property
    def _limits(self) -> Limits:
        return Limits(self.network, self.report.rules)
