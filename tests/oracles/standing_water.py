"""Static pressure by its definition: over every way from every supply, the highest of the lowest."""

from functools import cached_property

import networkx as nx

from oracles.walking import Sense, Step, Walking
from plumbnet.layout.system import End, System

DRY = float("-inf")


class StandingWater(Walking):
    """Static pressures of a system, gauge at datum; minus infinity where no water is."""

    @cached_property
    def static_pa(self) -> dict[End, float]:
        return {end: pressure_pa for end, (_, _, pressure_pa) in self._reached.items()}

    @cached_property
    def cut_off(self) -> set[End]:
        """Ports that water reaches only through a shut valve."""
        return {end for end, (shut, _, pressure_pa) in self._reached.items() if shut < 0 and pressure_pa > DRY}

    @cached_property
    def _reached(self) -> dict[End, tuple[int, int, float]]:
        """Of every way from every supply the best: through the fewest shut valves, the fewest devices the wrong way.

        Of those the one with the highest pressure.
        """
        best = dict.fromkeys(self.ends, (-len(self.ends), 0, DRY))
        for name, part in self.system.parts.items():
            source = part.source()
            if source is None:
                continue
            pressure_pa = source.pressure_pa + self.head_pa(name)
            for end, way in self.ways(End(name, source.port), lambda step: step.is_way or step.sense is Sense.SHUT):
                shut, back = (-sum(step.sense is sense for step in way) for sense in (Sense.SHUT, Sense.BACK))
                best[end] = max(best[end], (shut, back, self._passed_on(pressure_pa, way)))
        return best

    def _passed_on(self, pressure_pa: float, way: list[Step]) -> float:
        for step in way:
            rise_pa = 0.0 if step.part in self._circling else step.rise_pa
            pressure_pa = min(pressure_pa - step.opens_pa + rise_pa, step.set_pa)
        return pressure_pa

    @cached_property
    def _circling(self) -> set[str]:
        """Boosters from whose outlet water comes back to their inlet."""
        graph = self.graph(lambda step: step.is_supply)
        return {step.part for step in self.steps if step.rise_pa > 0.0 and nx.has_path(graph, step.end, step.start)}

    def floor_pa(self, step: Step) -> float:
        """What the near side must exceed to push through a gate; infinite where it never can."""
        behind_pa = self.static_pa[step.end]
        if not step.is_way or behind_pa >= step.set_pa:
            return float("inf")
        if step.is_joint:
            return self.static_pa[step.start]
        return behind_pa + step.opens_pa

    def higher_pa(self, step: Step) -> float:
        """By how much the near side of a gate stands higher when water passes: what opens it, or what a pump holds."""
        near_pa, far_pa = self.static_pa[step.start], self.static_pa[step.end]
        if DRY in {near_pa, far_pa}:
            return step.opens_pa
        return near_pa - far_pa if step.is_joint or near_pa - far_pa > step.opens_pa + 1.0 else step.opens_pa

    def passes(self, step: Step, bound_pa: float) -> bool:
        """Whether water at or below the bound can take this step."""
        return step.sense is Sense.FREE or self.floor_pa(step) <= bound_pa


def standing_water(system: System) -> StandingWater:
    return StandingWater(system)
