"""Loops by their definition: every way from a pump's outlet back to its inlet that meets no part's water twice."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import networkx as nx

from oracles.walking import Walking
from plumbnet.layout.system import End, System


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
        inlet, outlet = (End(pump, port) for port in self.system.parts[pump].driven() or ())
        bodies: set[End] = set()
        pipes: set[int] = set()
        for ends, passed in self._walk(outlet, inlet, {self._body_of[outlet]}, -1):
            bodies |= {self._body_of[end] for end in (*ends, inlet, outlet)}
            pipes |= set(passed)
        return Round(frozenset(end for end, body in self._body_of.items() if body in bodies), frozenset(pipes))

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
