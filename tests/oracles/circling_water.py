"""Loops by their definition: every way from a pump's outlet back to its inlet that meets no part's water twice.

Of a way that leads through reducers it is asked whether the water comes round: it leaves each of them with the set,
what pumps add on the way comes to it, and to no port may it come with less than stands there.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from math import inf

import networkx as nx

from oracles.standing_water import StandingWater
from oracles.walking import Sense, Step, Walking
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import End, System

SAME_PA = 1e-3
"""Sums of the same few pressures in another order differ by less."""


@dataclass(frozen=True)
class Round:
    """All that water which a pump drives can come by: ports of every body of water on a way round, and its pipes."""

    ends: frozenset[End]
    pipes: frozenset[int]

    @property
    def parts(self) -> frozenset[str]:
        """Parts whose water it moves."""
        return frozenset(end.part for end in self.ends)


@dataclass(frozen=True)
class CirclingWater:
    """The water of each part that passages join is one body; pumps push from inlet to outlet and nowhere else."""

    system: System

    def rounds(self) -> dict[str, Round]:
        """The round of every running pump that drives one."""
        pumps = [name for name, part in self.system.parts.items() if part.driven() is not None]
        found = {pump: self.round_of(pump) for pump in pumps}
        return {pump: one for pump, one in found.items() if one.ends}

    def circled(self, pump: str) -> frozenset[End]:
        """Ports of every body of water on some way round through this pump; none where it drives nothing."""
        return self.round_of(pump).ends

    def round_of(self, pump: str) -> Round:
        """The round of a pump; empty where it drives nothing."""
        inlet, outlet = self._ends_of(pump)
        bodies: set[End] = set()
        pipes: set[int] = set()
        for ends, passed in self._walk(outlet, inlet, {self._body_of[outlet]}, -1):
            if self._comes_round([inlet, *ends, inlet]):
                bodies |= {self._body_of[end] for end in (*ends, inlet, outlet)}
                pipes |= set(passed)
        return Round(frozenset(end for end, body in self._body_of.items() if body in bodies), frozenset(pipes))

    def _ends_of(self, pump: str) -> tuple[End, End]:
        inlet, outlet = (End(pump, port) for port in self.system.parts[pump].driven() or ())
        return inlet, outlet

    def _comes_round(self, circle: list[End]) -> bool:
        """Whether water comes from every reducer of a circle back to it."""
        steps = self._steps(circle)
        reducers = (number for number, step in enumerate(steps) if step.set_pa < inf)
        return all(self._comes_back(steps[number], [*steps[number + 1 :], *steps[:number]]) for number in reducers)

    def _comes_back(self, reducer: Step, steps: list[Step]) -> bool:
        """Whether water that leaves a reducer at its set comes with what stands there to every port of the steps."""
        comes_pa = reducer.set_pa
        for step in [replace(reducer, set_pa=inf), *steps]:
            comes_pa = min(comes_pa, step.set_pa) + self._adds_pa(step)
            if comes_pa < self._stands_pa[step.end] - SAME_PA:
                return False
        return True

    def _adds_pa(self, step: Step) -> float:
        """What a pump adds that runs this way: its rise, its head; nothing where that is not known."""
        part = self.system.parts.get(step.part)
        if part is None or part.driven() != (step.start.port, step.end.port):
            return 0.0
        return getattr(part, "rise_pa", None) or getattr(part, "head_pa", None) or 0.0

    def _steps(self, circle: list[End]) -> list[Step]:
        """The steps by which one comes from port to port, through parts and pipes."""
        found: list[Step] = []
        for start, end in pairwise(circle):
            is_inside = start.part == end.part and nx.has_path(self._passages, start, end)
            way = nx.shortest_path(self._passages, start, end) if is_inside else [start, end]
            found += [self._step_of.get(ends, Step(*ends, "", Sense.FREE)) for ends in pairwise(way)]
        return found

    @cached_property
    def _step_of(self) -> dict[tuple[End, End], Step]:
        return {(step.start, step.end): step for step in Walking(self.system).steps if step.part}

    @cached_property
    def _stands_pa(self) -> dict[End, float]:
        """What stands at each port while pumps let nothing back that would drive water through a reducer."""
        holding = []
        for pump, part in self.system.parts.items():
            if part.driven() is not None:
                inlet, outlet = self._ends_of(pump)
                ways = self._walk(outlet, inlet, {self._body_of[outlet]}, -1)
                if any(step.set_pa < inf for ends, _ in ways for step in self._steps([*ends, inlet])):
                    holding.append(Change.model_validate({"set": {"part": pump, "check": True}}))
        return StandingWater(with_changes(self.system, holding)).unraised_pa

    def _walk(self, at: End, goal: End, met: set[End], last_pipe: int) -> Iterator[tuple[list[End], list[int]]]:
        """Ends and pipes of each way from the port `at`, out by a pipe, to the port `goal`."""
        for number, beyond in self._pipes_at[at]:
            if number == last_pipe:
                continue
            if beyond == goal:
                yield [at], [number]
                continue
            body = self._body_of[beyond]
            if body in met:
                continue
            met.add(body)
            for leave in self._inside[beyond]:
                for ends, pipes in self._walk(leave, goal, met, number):
                    yield [at, beyond, leave, *ends], [number, *pipes]
            met.discard(body)

    @cached_property
    def _passages(self) -> "nx.DiGraph[End]":
        walking = Walking(self.system)
        graph: nx.DiGraph[End] = nx.DiGraph()
        graph.add_nodes_from(walking.ends)
        for step in walking.steps:
            if step.part and step.is_supply and self.system.parts[step.part].driven() is None:
                graph.add_edge(step.start, step.end)
        for name, part in self.system.parts.items():
            driven = part.driven()
            if driven is not None:
                graph.add_edge(End(name, driven[0]), End(name, driven[1]))
        return graph

    @cached_property
    def _body_of(self) -> dict[End, End]:
        return {end: min(body) for body in nx.weakly_connected_components(self._passages) for end in body}

    @cached_property
    def _inside(self) -> dict[End, list[End]]:
        """Ports of the same part that water which enters at a port can leave by."""
        return {end: [end, *sorted(nx.descendants(self._passages, end))] for end in self._passages}

    @cached_property
    def _pipes_at(self) -> dict[End, list[tuple[int, End]]]:
        pipes_at: dict[End, list[tuple[int, End]]] = defaultdict(list)
        for number, pipe in enumerate(self.system.pipes):
            pipes_at[pipe.start].append((number, pipe.end))
            pipes_at[pipe.end].append((number, pipe.start))
        return pipes_at
