"""Reducers in a loop: whether water that leaves one at its set comes back to it, with what pumps add on the way."""

import heapq
import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeVar

from plumbnet.layout.model import End
from plumbnet.network.loops.cycles import FlowArc
from plumbnet.network.piping import POTENTIAL_ROUNDING_PA, Node, Piping, piping_of, zoning_of
from plumbnet.network.pressure import standing_pressures

_Ends = tuple[Node, Node]
"""Two ports in the direction in which water passes."""


Behind = TypeVar("Behind", _Ends, _Ends | None)


@dataclass(frozen=True, slots=True)
class Hindrance:
    """Why water does not go round: from the reducer it comes to the port `at` with less than stands there.

    Pressures are gauge, each at its part's height; `comes_pa` counts what pumps add on the way.
    """

    reducer: str
    set_pa: float
    at: End
    comes_pa: float
    stands_pa: float


@dataclass(frozen=True, slots=True)
class ReducerLift:
    """What stands at each port while the pumps that are asked about let nothing back, gauge at datum.

    `reducers` are the devices that water passes below a pressure, with that pressure at datum; `heads_pa` what pumps
    add. A pump of which it is not known adds nothing.
    """

    piping: Piping

    static_pa: Sequence[float]
    reducers: Mapping[_Ends, float]
    heads_pa: Mapping[_Ends, float]

    def hindrance(self, way: Sequence[Node]) -> Hindrance | None:
        """What keeps water from going round by a way from a pump's outlet to its inlet; None where nothing does.

        From a reducer it comes with the set of it or less; so it must come everywhere, what pumps add on the way
        counted, with no less than stands there, until it is back. Told is the first place where it does not.
        """
        *_, (_, _, reducer) = self._followed(way, math.inf, None)
        if reducer is None:
            return None
        begin = way.index(reducer[1])
        circle = (*way[begin:], *way[:begin])
        for node, comes_pa, behind in self._followed(circle, self.reducers[reducer], reducer):
            if comes_pa < self.static_pa[node] - POTENTIAL_ROUNDING_PA:
                return self._hindrance(behind, node, comes_pa)
        return None

    def _followed(self, way: Sequence[Node], comes_pa: float, behind: Behind) -> Iterator[tuple[Node, float, Behind]]:
        """The ports of a way, the highest pressure with which water comes there, and the reducer it owes that to."""
        yield way[0], comes_pa, behind
        for ends in pairwise(way):
            below_pa = self.reducers.get(ends, math.inf)
            if below_pa < comes_pa:
                comes_pa, behind = below_pa, ends
            comes_pa += self.heads_pa.get(ends, 0.0)
            yield ends[1], comes_pa, behind

    def _hindrance(self, reducer: _Ends, node: Node, comes_pa: float) -> Hindrance:
        ports, heads_pa = self.piping.ports, self.piping.heads_pa
        return Hindrance(
            reducer=ports[reducer[1]].part,
            set_pa=self.reducers[reducer] - heads_pa[reducer[1]],
            at=ports[node],
            comes_pa=comes_pa - heads_pa[node],
            stands_pa=self.static_pa[node] - heads_pa[node],
        )

    def likely(self, arcs: list[FlowArc], pump: FlowArc) -> list[FlowArc]:
        """The arcs less those to which water can come with what stands there by no way at all.

        As if every way had the heads of all pumps and the highest reducer behind it; so no arc of a way round is lost.
        """
        added_pa = sum(self.heads_pa.get((arc.start, arc.end), 0.0) for arc in arcs)
        arrives_pa = self._arriving(arcs, pump, math.inf, added_pa).get(pump.start, -math.inf)
        comes_pa = self._arriving(arcs, pump, arrives_pa + added_pa, added_pa)
        return [arc for arc in arcs if arc == pump or (arc.start in comes_pa and arc.end in comes_pa)]

    def _arriving(self, arcs: list[FlowArc], pump: FlowArc, starts_pa: float, added_pa: float) -> dict[Node, float]:
        """The highest pressure with which water from the pump can come to each port (widest path)."""
        onward, found = _onward(arcs, pump), dict[Node, float]()
        queue = [(-starts_pa, pump.end)]
        while queue:
            negative, node = heapq.heappop(queue)
            if node in found or -negative < self.static_pa[node] - POTENTIAL_ROUNDING_PA:
                continue
            found[node] = -negative
            for beyond in onward.get(node, ()):
                below_pa = self.reducers.get((node, beyond), math.inf)
                heapq.heappush(queue, (-min(-negative, below_pa + added_pa), beyond))
        return found

    def easiest(self, arcs: list[FlowArc], pump: FlowArc) -> list[Node]:
        """The way round behind whose reducers water comes with most; of equal ones the shortest, then by name."""
        onward, before = _onward(arcs, pump), dict[Node, Node]()
        queue = [(-math.inf, 0, self.piping.ports[pump.end], pump.end, pump.end)]
        while pump.start not in before:
            negative, length, _, node, last = heapq.heappop(queue)
            if node in before:
                continue
            before[node] = last
            for beyond in onward.get(node, ()):
                below_pa, port = self.reducers.get((node, beyond), math.inf), self.piping.ports[beyond]
                heapq.heappush(queue, (max(negative, -below_pa), length + 1, port, beyond, node))
        way = [pump.start]
        while way[-1] != pump.end:
            way.append(before[way[-1]])
        return way[::-1]

    def with_any_head(self, pump: FlowArc) -> "ReducerLift":
        """The same with a pump that lifts water as far as may be asked."""
        return replace(self, heads_pa={**self.heads_pa, (pump.start, pump.end): math.inf})


def _onward(arcs: list[FlowArc], pump: FlowArc) -> dict[Node, list[Node]]:
    """The ports that follow each, by all arcs but the pump."""
    onward: dict[Node, list[Node]] = {}
    for arc in arcs:
        if arc != pump:
            onward.setdefault(arc.start, []).append(arc.end)
    return onward


def lifting_of(piping: Piping, pumps: Collection[str]) -> ReducerLift:
    """What there is to lift in a system for pumps that let nothing back. Near-linear."""
    zoning = zoning_of(piping_of(piping.system, holding=pumps))
    stands = standing_pressures(zoning)
    static_pa = [stands.at(zone) for zone in zoning.zone_of]
    return ReducerLift(zoning.piping, static_pa, dict(_reducers(zoning.piping)), _heads(piping))


def _reducers(piping: Piping) -> Iterator[tuple[_Ends, float]]:
    """Reducers past which nothing else leads between the same two ports."""
    below: dict[_Ends, float] = {}
    for gate in piping.gates:
        if gate.forward is not None:
            ends = gate.start, gate.end
            below[ends] = max(gate.forward.below_pa, below.get(ends, -math.inf))
    for gate in piping.gates:
        ends = gate.start, gate.end
        if below.get(ends, math.inf) < math.inf and not piping.free.has_edge(*ends):
            yield ends, below[ends]


def _heads(piping: Piping) -> dict[_Ends, float]:
    """What each running pump adds of which the file says it."""
    found: dict[_Ends, float] = {}
    for name, part in piping.system.parts.items():
        ends, adds_pa = part.driven(), part.driving_pa()
        if ends is not None and adds_pa is not None:
            start, end = (piping.node_of[End(name, port)] for port in ends)
            found[start, end] = adds_pa
    return found
