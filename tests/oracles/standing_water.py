"""Static pressure by its definition: over every way from every supply, the highest of the lowest.

What a pump without a check holds counts as height: pressures stand at the datum of the first port that is joined.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cached_property

import networkx as nx

from oracles.walking import Sense, Site, Step, Walking
from plumbnet.layout.model.part import Source
from plumbnet.layout.model.system import End, System

DRY = float("-inf")
_SAME_PA = 1e-3


class StandingWater(Walking):
    """Static pressures of a system, gauge at datum; minus infinity where no water is."""

    @cached_property
    def static_pa(self) -> dict[End, float]:
        return {end: pressure_pa + self.raised_pa[end] for end, pressure_pa in self.unraised_pa.items()}

    @cached_property
    def zone_of(self) -> dict[End, int]:
        """Zones by number: ports that free steps join."""
        free = self.graph(lambda step: step.sense is Sense.FREE)
        zones = enumerate(nx.weakly_connected_components(free))
        return {end: number for number, ends in zones for end in ends}

    @cached_property
    def raised_pa(self) -> dict[End, float]:
        """What pumps without a check add to the height of each port: by what joins the water most closely."""
        graph: nx.Graph[End] = nx.Graph()
        graph.add_nodes_from(self.ends)
        looseness = {Sense.FREE: 0, Sense.FORWARD: 2, Sense.BACK: 2, Sense.AGAINST: 2, Sense.SHUT: 3}
        for step in self.steps:
            weight = 1 if self.holds_pa(step) else looseness[step.sense]
            if not graph.has_edge(step.start, step.end) or graph.edges[step.start, step.end]["weight"] > weight:
                graph.add_edge(step.start, step.end, weight=weight, step=step)
        tree = nx.minimum_spanning_tree(graph)
        raised: dict[End, float] = {}
        for first in self.ends:
            raised.setdefault(first, 0.0)
            for near, far in nx.bfs_edges(tree, first):
                passed: Step = tree.edges[near, far]["step"]
                held_pa = self.holds_pa(passed)
                raised.setdefault(far, raised[near] + (held_pa if passed.start == near else -held_pa))
        return raised

    @cached_property
    def has_one_datum(self) -> bool:
        """Whether no gate leads past a pump that counts as height."""
        return all(
            abs(self.raised_pa[step.start] + self.holds_pa(step) - self.raised_pa[step.end]) < _SAME_PA
            for step in self.steps
        )

    def holds_pa(self, step: Step) -> float:
        """By how much water before a step stands higher than water behind it, where it goes through such a pump."""
        near_pa, far_pa = self.unraised_pa[step.start], self.unraised_pa[step.end]
        return near_pa - far_pa if step.is_joint and DRY not in {near_pa, far_pa} else 0.0

    @cached_property
    def sites(self) -> list[Site]:
        """Outlets at the raised datum."""
        return [replace(site, opens_pa=site.opens_pa + self.raised_pa[site.end]) for site in super().sites]

    def head_pa(self, end: End) -> float:
        """What the height of a port above datum takes from the pressure there."""
        return self.elevation_pa(end.part) + self.raised_pa[end]

    @cached_property
    def unraised_pa(self) -> dict[End, float]:
        return {end: pressure_pa for end, (_, _, pressure_pa) in self._reached.items()}

    @cached_property
    def cut_off(self) -> set[End]:
        """Ports that water reaches only through a shut valve."""
        return {end for end, (shut, _, pressure_pa) in self._reached.items() if shut < 0 and pressure_pa > DRY}

    @cached_property
    def _reached(self) -> dict[End, tuple[int, int, float]]:
        """Of every way from every supply the best: through the fewest shut valves, the fewest devices the wrong way.

        Of those the one with the highest pressure. Boosters that feed their own inlet lift nothing; they feed it by no
        reducer that is found to be held shut by what stands behind it, so long as more such are found.
        """
        return self._best(lambda source: source.pressure_pa, self._idle_boosters)

    def own_pa(self, gives_pa: Callable[[Source], float]) -> dict[End, float]:
        """Gauge at each port's own height, where the supplies give other pressures than they are judged by."""
        found = self._best(gives_pa, self._idle_boosters).items()
        return {end: pressure_pa - self.elevation_pa(end.part) for end, (_, _, pressure_pa) in found}

    @cached_property
    def _idle_boosters(self) -> set[str]:
        """Boosters that feed their own inlet, with the supplies as they are judged by."""
        held: set[Step] = set()
        while True:
            circling = self._circling(held)
            best = self._best(lambda source: source.pressure_pa, circling)
            reducers = (step for step in self.steps if step.is_supply and step.set_pa < float("inf"))
            found = {step for step in reducers if self._is_held(step, best[step.end][2])} - held
            if not found:
                return circling
            held |= found

    def _best(self, gives_pa: Callable[[Source], float], circling: set[str]) -> dict[End, tuple[int, int, float]]:
        best = dict.fromkeys(self.ends, (-len(self.ends), 0, DRY))
        for name, part in self.system.parts.items():
            source = part.source()
            if source is None:
                continue
            pressure_pa = gives_pa(source) + self.elevation_pa(name)
            for end, way in self.ways(End(name, source.port), lambda step: step.is_way or step.sense is Sense.SHUT):
                shut, back = (-sum(step.sense is sense for step in way) for sense in (Sense.SHUT, Sense.BACK))
                best[end] = max(best[end], (shut, back, self._passed_on(pressure_pa, way, circling)))
        return best

    @cached_property
    def _supplied(self) -> dict[End, float]:
        """Supplies, with their pressure at datum."""
        sources = ((name, part.source()) for name, part in self.system.parts.items())
        return {
            End(name, source.port): source.pressure_pa + self.elevation_pa(name)
            for name, source in sources
            if source is not None
        }

    def _passed_on(self, pressure_pa: float, way: list[Step], circling: set[str]) -> float:
        for step in way:
            rise_pa = 0.0 if step.part in circling else step.rise_pa
            pressure_pa = min(pressure_pa - step.opens_pa + rise_pa, step.set_pa)
        return pressure_pa

    def _circling(self, held: set[Step]) -> set[str]:
        """Boosters from whose outlet water comes back to their inlet, not by the reducers that are held shut."""
        graph = self.graph(lambda step: step.is_supply and step not in held)
        return {step.part for step in self.steps if step.rise_pa > 0.0 and nx.has_path(graph, step.end, step.start)}

    def _is_held(self, reducer: Step, stands_pa: float) -> bool:
        """Whether more than its set stands behind a reducer, or its set and all water before it came from behind it."""
        graph = self.graph(lambda step: step.is_supply)
        behind = {end for end in self.ends if self.zone_of[end] == self.zone_of[reducer.end]}
        apart = graph.subgraph(set(graph) - behind)
        if stands_pa < reducer.set_pa or reducer.start in behind:
            return False
        if stands_pa > reducer.set_pa:
            return True
        comes = any(nx.has_path(graph, start, reducer.start) for start in self._supplied)
        comes_apart = any(nx.has_path(apart, start, reducer.start) for start in self._supplied if start in apart)
        return comes and not comes_apart

    def floor_pa(self, step: Step) -> float:
        """What the near side must exceed to push through a gate; infinite where it never can."""
        behind_pa = self.static_pa[step.end]
        if not step.is_way or behind_pa >= self.set_pa(step):
            return float("inf")
        return behind_pa + self.opens_pa(step)

    def set_pa(self, step: Step) -> float:
        """The pressure behind a reducer at which it shuts; infinite for all else."""
        return step.set_pa + self.raised_pa[step.end]

    def opens_pa(self, step: Step) -> float:
        """By how much water before a step must stand higher at the raised datum than water behind it."""
        own_pa = self.holds_pa(step) if step.is_joint else step.opens_pa
        return own_pa + self.raised_pa[step.start] - self.raised_pa[step.end]

    def passes(self, step: Step, bound_pa: float) -> bool:
        """Whether water at or below the bound can take this step."""
        return step.sense is Sense.FREE or self.floor_pa(step) <= bound_pa


def standing_water(system: System) -> StandingWater:
    return StandingWater(system)
