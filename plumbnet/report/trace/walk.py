"""What the water meets on its way from a heater, part by part: what lets it pass, what takes it, what stops it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import End, Free, Outlet, Part, Role
from plumbnet.network import Network
from plumbnet.network.outlets import MOST_RUNGS, floor_pa
from plumbnet.network.piping import Crossing
from plumbnet.report.prose import spoken
from plumbnet.report.trace.outlet_phrases import charge, lost, running, taking
from plumbnet.rules import ROUNDING_PA, HeaterFacts

_NOT_COUNTED = "is open now, and nobody guarantees it: not counted"
MOST_LINES = 60
"""Lines of the walk before quiet branches, which hold neither an outlet nor a gate, are told in one line."""


def walked(report: Report, heater: HeaterFacts) -> Iterator[str]:
    """The walk from a heater, a line for each part that its water meets; the outlets on it are those of its ladder."""
    yield "The water pushes out of every connection. In turn it meets:"
    steps = list(_Walk(report, heater).steps())
    told = _loud(steps) if len(steps) > MOST_LINES else set(range(len(steps)))
    for number, step in enumerate(steps):
        if number in told:
            yield f"{'  ' * step.depth}{step.text}"
    if len(told) < len(steps):
        yield f"  and {len(steps) - len(told)} more steps that end at shut fixtures and capped pipes"


def _loud(steps: list["_Step"]) -> set[int]:
    """Steps that matter to the answer, and those that lead to them."""
    told: set[int] = set()
    for number, step in enumerate(steps):
        at: int | None = number if step.is_loud else None
        while at is not None and at not in told:
            told.add(at)
            at = steps[at].came_from
    return told


@dataclass(frozen=True, slots=True)
class _Step:
    """A line of the walk: how deep it stands, what it says, the step it came from, whether it matters."""

    depth: int
    text: str
    came_from: int | None
    is_loud: bool


@dataclass(frozen=True, slots=True)
class _Meeting:
    """What the water meets at a port: in words, the ports by which it goes on, and whether it matters."""

    words: str
    onward: tuple[str, ...] = ()
    is_loud: bool = False


@dataclass(frozen=True, slots=True)
class _Gating:
    """What a gate inside a part does to the water on its way to the port `toward`."""

    toward: str
    words: str
    passes: bool


def _told(gates: list[_Gating]) -> str:
    """What the gates of a part do; where one lets the water pass and another stops it, by their connections."""
    passing = next((gate for gate in gates if gate.passes), None)
    stopping = next((gate for gate in gates if not gate.passes), None)
    if passing is None or stopping is None:
        return gates[0].words
    stops = stopping.words.partition(":")[0]
    return f"{passing.words} to its {passing.toward} connection, and {stops} at its {stopping.toward} one"


class _Walk:
    """Follows the water from part to part, depth first; deeper only where the way forks."""

    def __init__(self, report: Report, heater: HeaterFacts) -> None:
        self.network = network = report.network
        self.facts, self.heater = report.facts, heater
        self.tolerance_pa = report.profile.charge_tolerance.value_pa
        self.parts = network.piping.system.parts
        self.gates: dict[End, list[Crossing]] = {}
        for crossing in _crossings(network):
            self.gates.setdefault(network.piping.ports[crossing.leaves], []).append(crossing)
        self.head_pa = network.piping.heads_pa[next(network.piping.nodes_of(heater.name))]
        self.pipes: dict[End, list[End]] = {}
        for pipe in network.piping.system.pipes:
            self.pipes.setdefault(pipe.start, []).append(pipe.end)
            self.pipes.setdefault(pipe.end, []).append(pipe.start)

    def steps(self) -> Iterator[_Step]:
        """Every step; a part is told once for each side of it that the water meets."""
        store = self.parts[self.heater.name].heat()
        ports = () if store is None else _joined(self.parts[self.heater.name], store.inlet)
        met = {End(self.heater.name, port) for port in ports}
        stack: list[tuple[End, int, int | None, str]] = [
            (far, 1, None, f"by its {port} connection, ")
            for port in reversed(ports)
            for far in self.pipes.get(End(self.heater.name, port), [])
        ]
        number = 0
        while stack:
            end, depth, came_from, lead = stack.pop()
            if end in met:
                continue
            meeting = self._meets(end)
            met |= {end, *(End(end.part, port) for port in meeting.onward)}
            kind = spoken(self.parts[end.part].kind)
            yield _Step(depth, f"{lead}{end.part}, {kind}: {meeting.words}", came_from, meeting.is_loud)
            onward = (far for port in meeting.onward for far in self.pipes.get(End(end.part, port), []))
            ahead = [far for far in onward if far not in met]
            forks = len(ahead) > 1
            stack += [(far, depth + forks, number, "" if forks else "then ") for far in reversed(ahead)]
            number += 1

    def _meets(self, end: End) -> _Meeting:
        part = self.parts[end.part]
        outlet = next((outlet for outlet in part.outlets() if outlet.port == end.port), None)
        if outlet is not None:
            return self._outlet(end, outlet)
        if part.is_fitting:
            return _Meeting("it goes every way from here", (end.port,))
        reached, gates = self._inside(end)
        onward = tuple(port for port in reached if port != end.port)
        if lost(part):
            return _Meeting(lost(part), onward, is_loud=True)
        if gates:
            return _Meeting(_told(gates), onward, is_loud=True)
        return _Meeting("lets it through", onward) if onward else _Meeting("shut, a dead end")

    def _inside(self, end: End) -> tuple[list[str], list["_Gating"]]:
        """The ports of a part that the water comes to from one of them, and what its gates do on the way."""
        part = self.parts[end.part]
        reached: list[str] = list(_joined(part, end.port))
        gates: list[_Gating] = []
        for port in reached:
            for crossing in self.gates.get(End(end.part, port), []):
                beyond = self.network.piping.ports[crossing.enters].port
                if beyond in reached:
                    continue
                words, passes = self._gate(crossing)
                gates.append(_Gating(beyond, words, passes))
                if passes:
                    reached += [other for other in _joined(part, beyond) if other not in reached]
        return reached, gates

    def _outlet(self, end: End, outlet: Outlet) -> _Meeting:
        onward = tuple(port for port in _joined(self.parts[end.part], end.port) if port != end.port)
        rung = next((rung for rung in self.heater.ladder if rung.outlet == end.part), None)
        first = self.heater.way_out
        if rung is None and first is not None:
            return _Meeting(f"takes none of it: {first.outlet} takes any amount before", onward)
        if rung is None and len(self.heater.ladder) < MOST_RUNGS:
            return _Meeting("takes none of it: a reducer on the way shuts before", onward)
        opens_pa = self._own_pa(end, outlet) if rung is None else rung.opens_pa
        words = running(self.facts, end.part) or taking(self.facts, outlet, opens_pa, bound_pa=self._bound_pa)
        words += charge(self.facts, end.part, tolerance_pa=self.tolerance_pa)
        return _Meeting(words, onward, is_loud=True)

    def _own_pa(self, end: End, outlet: Outlet) -> float:
        """Pressure, gauge at the heater, at which an outlet takes water that the ladder had no room for."""
        node = self.network.piping.node_of[end]
        opens_pa = outlet.opens_pa + self.network.piping.heads_pa[node]
        if outlet.role is Role.TANK:
            opens_pa = max(opens_pa, self.network.standing.at(self.network.zoning.zone_of[node]))
        return opens_pa - self.head_pa

    @property
    def _bound_pa(self) -> float:
        """The limit, or the static pressure where that is higher; gauge at the heater."""
        return max(self.heater.limit_pa, self.heater.static_pa or 0.0) + ROUNDING_PA

    def _gate(self, crossing: Crossing) -> tuple[str, bool]:
        """What a one-way, conditional or shut passage does to the water, and whether it passes."""
        if crossing.gate.is_shut:
            return "is shut and STOPS it", False
        if crossing.way is None:
            is_open = self._is_wide_open(crossing)
            return _NOT_COUNTED if is_open else "STOPS it: water passes only the other way", False
        back = "lets it back through its bypass" if crossing.is_bypass else "has no check and lets it back"
        word = "lets it pass" if crossing.is_forward else back
        return (word, True) if crossing.near == crossing.far else self._conditional(crossing, word)

    def _is_wide_open(self, crossing: Crossing) -> bool:
        """Whether a reducer, met from behind, stands open because what lies behind it is below its set."""
        forward = crossing.gate.forward
        return (
            forward is not None and self.network.standing.at(crossing.near) < forward.below_pa - ROUNDING_PA < math.inf
        )

    def _conditional(self, crossing: Crossing, word: str) -> tuple[str, bool]:
        """What a gate into another zone does, which depends on the pressures."""
        standing, first = self.network.standing, self.heater.way_out
        floor = floor_pa(crossing, standing)
        if floor is None:
            return "STOPS it: what lies beyond stands at the set pressure already", False
        if floor <= standing.at(crossing.near) + ROUNDING_PA:
            return word, True
        if first is not None and floor > first.opens_pa + self.head_pa + ROUNDING_PA:
            return f"{word} only above {self._here(floor)}: {first.outlet} takes any amount before", False
        if floor > self._bound_pa + self.head_pa:
            return f"{word} only above {self._here(floor)}, which is past the limit", True
        return f"{word} once it stands above {self._here(floor)}", True

    def _here(self, pressure_pa: float) -> str:
        """A pressure at datum as it reads at the heater."""
        return self.facts.pressure(pressure_pa - self.head_pa)


def _crossings(network: Network) -> Iterator[Crossing]:
    """Every gate in both directions, those within one zone too."""
    zone_of = network.zoning.zone_of
    for gate in network.piping.gates:
        near, far = zone_of[gate.start], zone_of[gate.end]
        yield Crossing(gate, near, far, gate.start, gate.end, gate.forward)
        yield Crossing(gate, far, near, gate.end, gate.start, gate.backward)


def _joined(part: Part, port: str) -> tuple[str, ...]:
    """The ports of a part that free passages join to one of them, itself first."""
    joined = [port]
    for known in joined:
        for passage in part.passages():
            if isinstance(passage, Free) and known in (passage.a, passage.b):
                joined += [other for other in (passage.a, passage.b) if other not in joined]
    return tuple(joined)
