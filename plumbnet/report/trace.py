"""The way of the water in words, as told at the board: where it pushes, what it meets, what lets it through or stops it."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.report import Report
from plumbnet.layout.part import Free, Outlet, Part, Role
from plumbnet.layout.quantity import PRESSURE, TEMPERATURE, VOLUME, show
from plumbnet.layout.system import End
from plumbnet.network.ladder import floor_pa
from plumbnet.network.whole import Network, network_of
from plumbnet.report.text import CAUTION
from plumbnet.report.words import spoken
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict

MOST_LINES = 60
"""Lines of the walk before quiet branches, which hold neither an outlet nor a gate, are told in one line."""


def trace(report: Report, heater: HeaterFacts) -> str:
    """The walk from one heater, its ladder, and the verdict; ends with a line break."""
    network = network_of(report.system)
    lines = [*_opening(report, heater), "", *_walk(network, report.facts, heater)]
    lines += ["", *_ladder(report.facts, heater), "", *_verdict(report.facts, heater), "", CAUTION]
    return "\n".join(lines) + "\n"


def _opening(report: Report, heater: HeaterFacts) -> Iterator[str]:
    facts = report.facts
    volume, hot = show(heater.heated_volume_m3, VOLUME, facts.units), show(heater.hot_k, TEMPERATURE, facts.units)
    cold = "cold" if heater.cold_k is None else show(heater.cold_k, TEMPERATURE, facts.units)
    grown = show(heater.expansion_m3, VOLUME, facts.units)
    yield f"{heater.name} is {spoken(heater.kind)}. Every fixture is shut, and it heats up."
    yield f"It warms {volume} from {cold} to {hot}; that water grows by {grown}, and the growth must go somewhere."
    if heater.loops:
        yield f"A pump drives its water round: {'; '.join(' > '.join(loop) for loop in heater.loops)}."
    if heater.static_pa is not None:
        static, limit = show(heater.static_pa, PRESSURE, facts.units), show(heater.limit_pa, PRESSURE, facts.units)
        yield f"It stands at {static} now and must not pass {limit} ({heater.limit_by})."


def _walk(network: Network, facts: Facts, heater: HeaterFacts) -> Iterator[str]:
    yield "The water pushes out of every connection. In turn it meets:"
    steps = list(_Walk(network, facts, heater).steps())
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


class _Walk:
    """Follows the water from part to part, depth first; deeper only where the way forks."""

    def __init__(self, network: Network, facts: Facts, heater: HeaterFacts) -> None:
        self.network, self.facts, self.heater = network, facts, heater
        self.parts = network.piping.system.parts
        self.crossings = {crossing.leaves: crossing for crossing in network.zoning.crossings()}
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
        onward = tuple(port for port in _joined(part, end.port) if port != end.port)
        gate = self._gate(end)
        if gate is not None:
            return _Meeting(gate.words, (*onward, *gate.onward), is_loud=True)
        if onward or part.is_fitting:
            return _Meeting(
                "it can turn into every branch" if part.is_fitting else "lets it through", _through(part, end)
            )
        return _Meeting("shut, a dead end")

    def _outlet(self, end: End, outlet: Outlet) -> _Meeting:
        node = self.network.piping.node_of[end]
        zone = self.network.zoning.zone_of[node]
        opens = outlet.opens_pa + self.network.piping.heads_pa[node]
        if outlet.role is Role.TANK:
            opens = max(opens, self.network.standing.at(zone))
        onward = tuple(port for port in _joined(self.parts[end.part], end.port) if port != end.port)
        return _Meeting(_TAKES[outlet.role].format(self._here(opens)), onward, is_loud=True)

    def _gate(self, end: End) -> _Meeting | None:
        """What a one-way, conditional or shut passage at this port does to the water."""
        crossing = self.crossings.get(self.network.piping.node_of[end])
        if crossing is None:
            return None
        far = (self.network.piping.ports[crossing.enters].port,)
        if crossing.gate.is_shut:
            return _Meeting("is shut and STOPS it")
        if crossing.way is None:
            return _Meeting("STOPS it: water passes only the other way")
        floor = floor_pa(crossing, self.network.standing)
        if floor is None:
            return _Meeting("STOPS it: what lies beyond stands at the set pressure already")
        word = "lets it on" if crossing.leaves == crossing.gate.start else "lets it back through its bypass"
        if floor > self.heater.limit_pa + self.head_pa + 1.0 and floor > self.network.standing.at(crossing.near):
            return _Meeting(f"{word} only above {self._here(floor)}, which is past the limit")
        return _Meeting(f"{word} once it stands above {self._here(floor)}", far)

    def _here(self, pressure_pa: float) -> str:
        """A pressure at datum as it reads at the heater."""
        return self.facts.pressure(pressure_pa - self.head_pa)


_TAKES = {
    Role.STREET: "takes back any amount once it stands above {0}: the way out",
    Role.AIR: "open to the air, takes any amount above {0}: the way out",
    Role.TANK: "takes water into its cushion from {0} on",
    Role.EXPANSION_RELIEF: "opens at {0} and lets the growth off to a drain",
    Role.SAFETY_RELIEF: "opens at {0}, the last safety device and no control",
}


def _joined(part: Part, port: str) -> tuple[str, ...]:
    """The ports of a part that free passages join to one of them, itself first."""
    joined = [port]
    for known in joined:
        for passage in part.passages():
            if isinstance(passage, Free) and known in (passage.a, passage.b):
                joined += [other for other in (passage.a, passage.b) if other not in joined]
    return tuple(joined)


def _through(part: Part, end: End) -> tuple[str, ...]:
    """Where water goes on: all ports joined to the one it came by; of a fitting, the joint itself."""
    return _joined(part, end.port) if part.is_fitting else _joined(part, end.port)[1:]


def _ladder(facts: Facts, heater: HeaterFacts) -> Iterator[str]:
    if not heater.ladder:
        yield "Nothing it can reach opens at any pressure."
        return
    yield "As the pressure climbs, these open in turn (read at the heater):"
    for rung in heater.ladder:
        beyond = "" if rung.opens_pa <= max(heater.limit_pa, heater.static_pa or 0.0) + 1.0 else "  past the limit"
        yield f"  {facts.pressure(rung.opens_pa):>10}  {rung.outlet}, {rung.role.value}{beyond}"


def _verdict(facts: Facts, heater: HeaterFacts) -> Iterator[str]:
    stops = [" and ".join(names) for names in heater.stopped_by.sets]
    if stops:
        yield f"What stands between it and the way out: {' or '.join(stops)}."
    match heater.verdict:
        case Verdict.OPEN:
            way = next(rung for rung in heater.ladder if rung.role.is_way_out)
            yield f"So {heater.name} is OPEN: {' > '.join(way.way)}."
        case Verdict.CONTROLLED:
            settled = (
                "" if heater.settled_pa is None else f" All hot, it stands at {facts.pressure(heater.settled_pa)}."
            )
            yield f"So {heater.name} is closed but CONTROLLED: the growth finds room below the limit.{settled}"
        case Verdict.ON_DEMAND:
            yield f"So {heater.name} is closed, but ON-DEMAND: it fires only while a fixture runs, and then it is open."
        case Verdict.TRAPPED:
            yield f"So {heater.name} is TRAPPED: nothing keeps it at or below {facts.pressure(heater.limit_pa)}."
        case Verdict.SEALED:
            yield f"So {heater.name} is SEALED: not even a relief valve opens. DANGER: something will break."
    if heater.closes_if_shut.sets:
        valves = " or ".join(" and ".join(names) for names in heater.closes_if_shut.sets)
        yield f"Shut {valves}, and it would have nowhere to go."
