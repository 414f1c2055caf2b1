"""What is heated and by how much it grows: zones, loops, pieces of water, and their properties from a second library.

Densities of water are those of CoolProp's own IAPWS-IF97, whose densest water is looked for by bisection of the
slope; glycol is read from the tables that the program reads, for there is one such table.
"""

from collections import defaultdict
from dataclasses import dataclass
from functools import cached_property, lru_cache

import networkx as nx
from CoolProp.CoolProp import PropsSI

from oracles.circling_water import CirclingWater, Round
from oracles.standing_water import DRY, StandingWater
from oracles.walking import Sense, Step
from plumbnet.layout.model.part import HeatSource, Mixture, Role
from plumbnet.layout.model.system import End

AIR_PA = 101_325.0
USUAL_COLD_K = 283.15
NO_ROUND = Round(frozenset(), frozenset())


@dataclass(frozen=True)
class Warmed:
    """Water of one part or pipe, by its name and the port where it stands."""

    name: str
    end: End
    volume_m3: float


@dataclass(frozen=True)
class Warmth:
    """How water is warmed: from and to what temperature, under what absolute pressure, with what in it."""

    cold_k: float
    hot_k: float
    heated_abs_pa: float
    mixture: Mixture | None

    @property
    def growth(self) -> float:
        """Part of its cold volume by which it grows."""
        if self.mixture is not None:
            return _glycol_growth(self.mixture, self.cold_k, self.hot_k)
        return water_growth(self.cold_k, self.hot_k, self.heated_abs_pa)


class WarmWater(StandingWater):
    """Heat sources of a system and what they warm while every fixture is shut; pressures gauge at datum."""

    @cached_property
    def ends_in(self) -> dict[int, list[End]]:
        """Ports of each zone."""
        found: dict[int, list[End]] = defaultdict(list)
        for end in self.ends:
            found[self.zone_of[end]].append(end)
        return found

    @cached_property
    def start_pa(self) -> dict[int, float]:
        """Pressure of each zone cold; one without a supply is just full to its highest port, or does not run out."""
        starts = {}
        for zone, ends in self.ends_in.items():
            static_pa = self.static_pa[ends[0]]
            starts[zone] = min(self._stays_pa(zone), self.top_pa(zone)) if static_pa == DRY else static_pa
        return starts

    def _stays_pa(self, zone: int) -> float:
        """The lowest pressure from which water of a zone runs out by none of its ways, what lies beyond full too."""
        lowest = float("inf")
        for end, way in self.ways(self.ends_in[zone][0], lambda step: step.is_way):
            is_dry = self.static_pa[end] == DRY
            stays_pa = self.top_pa(self.zone_of[end]) if is_dry else self.static_pa[end]
            for step in reversed(way):
                if self.static_pa[step.start] != DRY or stays_pa >= self.set_pa(step):
                    stays_pa = float("inf")
                stays_pa += self.opens_pa(step)
            lowest = min(lowest, stays_pa)
        return lowest

    def higher_pa(self, step: Step) -> float:
        """By how much the near side of a gate stands higher when water passes: what opens it, or as it stood cold."""
        near_pa, far_pa = (self.start_pa[self.zone_of[end]] for end in (step.start, step.end))
        return max(near_pa - far_pa, self.opens_pa(step))

    def top_pa(self, zone: int) -> float:
        """Pressure that fills a zone to its highest port."""
        return max(self.head_pa(end) for end in self.ends_in[zone])

    @cached_property
    def sources(self) -> dict[str, HeatSource]:
        """Heat sources by name, in the order of the file."""
        return {name: heat for name, part in self.system.parts.items() if (heat := part.heat()) is not None}

    @cached_property
    def rounds(self) -> dict[str, Round]:
        """What each pump drives."""
        return CirclingWater(self.system).rounds()

    def inlet(self, heater: str) -> End:
        """Where its store is filled."""
        return End(heater, self.sources[heater].inlet)

    def loops(self, heater: str) -> list[Round]:
        """Rounds that pass its store."""
        ends = {self.inlet(heater), End(heater, self.sources[heater].outlet)}
        return [one for one in self.rounds.values() if ends & one.ends]

    def is_idle(self, heater: str) -> bool:
        """Whether it stays cold while nothing is drawn."""
        return self.sources[heater].on_flow and not self.loops(heater)

    def pieces(self, heater: str) -> list[Warmed]:
        """Its own store, and what stands in the loops it warms."""
        inlet = self.inlet(heater)
        found = {piece.name: piece for piece in self._contents(heater) if piece.end == inlet}
        for one in self.loops(heater):
            for part in sorted(one.parts):
                contents = [piece for piece in self._contents(part) if piece.volume_m3 > 0.0]
                found |= {piece.name: piece for piece in contents if piece.end in one.ends}
            for number in sorted(one.pipes):
                pipe = self.system.pipes[number]
                if pipe.volume_m3 > 0.0:
                    found[f"pipe {number}"] = Warmed(f"pipe {number}", pipe.start, pipe.volume_m3)
        return list(found.values())

    def _contents(self, part: str) -> list[Warmed]:
        contents = self.system.parts[part].contents()
        return [Warmed(f"{part}.{port}", End(part, port), volume_m3) for port, volume_m3 in contents]

    def warmth(self, heater: str) -> Warmth:
        """How a heat source warms its water."""
        source, inlet = self.sources[heater], self.inlet(heater)
        abs_pa = self.start_pa[self.zone_of[inlet]] - self.head_pa(inlet) + AIR_PA
        return Warmth(self.cold_k(inlet), source.hot_k, abs_pa, source.mixture)

    def cold_k(self, end: End) -> float:
        """Temperature of the coldest supply that reaches a port; through shut valves where none does without."""
        for graph in self._ways_in:
            before = nx.ancestors(graph, end) | {end}
            found = [
                source.temperature_k
                for name, part in self.system.parts.items()
                if (source := part.source()) is not None and End(name, source.port) in before
            ]
            if found:
                return min(found)
        return USUAL_COLD_K

    @cached_property
    def _ways_in(self) -> tuple["nx.DiGraph[End]", ...]:
        passing = self.graph(lambda step: step.is_way)
        return passing, self.graph(lambda step: step.is_way or step.sense is Sense.SHUT)

    @cached_property
    def warmest(self) -> dict[str, tuple[str, Warmed]]:
        """Each piece of water that is warmed, by name, with the heat source that makes it grow most."""
        found: dict[str, tuple[float, str, Warmed]] = {}
        for heater in self.sources:
            growth = 0.0 if self.is_idle(heater) else self.warmth(heater).growth
            for piece in () if self.is_idle(heater) else self.pieces(heater):
                grown_m3 = growth * piece.volume_m3
                if piece.name not in found or grown_m3 > found[piece.name][0]:
                    found[piece.name] = (grown_m3, heater, piece)
        return {name: (heater, piece) for name, (_, heater, piece) in found.items()}

    @cached_property
    def growth_m3(self) -> dict[int, float]:
        """Growth of all heated water of each zone."""
        grown = dict.fromkeys(self.ends_in, 0.0)
        for heater, piece in self.warmest.values():
            grown[self.zone_of[piece.end]] += self.warmth(heater).growth * piece.volume_m3
        return grown

    def stands_too_high(self) -> bool:
        """Whether some heater's piping, pipes that end in the air apart, reaches higher than its water can stand."""
        airy = {site.end for site in self.sites if site.outlet.role is Role.AIR}
        for heater in self.sources:
            zone = self.zone_of[self.inlet(heater)]
            heads = [self.head_pa(end) for end in self.ends_in[zone] if end not in airy]
            if self.start_pa[zone] - max(heads) <= -AIR_PA:
                return True
        return False


@lru_cache(maxsize=4096)
def specific_volume(temperature_k: float, abs_pa: float) -> float:
    """Cubic metres to a kilogram of liquid; saturated where the pressure is less than that."""
    if abs_pa <= saturation(temperature_k):
        return 1.0 / float(PropsSI("D", "T", temperature_k, "Q", 0, "IF97::Water"))
    return 1.0 / float(PropsSI("D", "T", temperature_k, "P", abs_pa, "IF97::Water"))


@lru_cache(maxsize=4096)
def saturation(temperature_k: float) -> float:
    """Absolute pressure at which water of a temperature boils."""
    return float(PropsSI("P", "T", temperature_k, "Q", 0, "IF97::Water"))


@lru_cache(maxsize=4096)
def water_growth(cold_k: float, hot_k: float, abs_pa: float) -> float:
    """Part of its volume by which water grows from its cold fill, or from the densest that it passes on the way."""
    step_k, densest_k, highest_k = 1e-3, cold_k, min(hot_k, 278.15)
    while highest_k - densest_k > step_k:
        middle_k = (densest_k + highest_k) / 2.0
        shrinks = specific_volume(middle_k + step_k, abs_pa) < specific_volume(middle_k - step_k, abs_pa)
        densest_k, highest_k = (middle_k, highest_k) if shrinks else (densest_k, middle_k)
    if densest_k == cold_k and cold_k >= hot_k:
        return 0.0
    return max(0.0, specific_volume(hot_k, abs_pa) / specific_volume(densest_k, abs_pa) - 1.0)


def _glycol_growth(mixture: Mixture, cold_k: float, hot_k: float) -> float:
    fluid = {"propylene": "APG", "ethylene": "AEG"}[mixture.glycol]
    cold, hot = (PropsSI("D", "T", t, "P", 1e6, f"INCOMP::{fluid}[{mixture.share}]") for t in (cold_k, hot_k))
    return max(0.0, float(cold / hot) - 1.0)
