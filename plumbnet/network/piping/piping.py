"""A system as ports joined by free passages, and the gates that let water pass one way or on a condition."""

import math
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field

import networkx as nx

from plumbnet.layout.model import Boosting, End, Free, OneWay, Outlet, Part, Passage, Reducing, Shut, System
from plumbnet.layout.units import PASCAL_PER_METRE

Node = int
"""A port of a part, numbered in the order of the file."""


@dataclass(frozen=True, slots=True)
class Way:
    """One direction of a gate.

    Water passes once the near side exceeds the far side by `opens_pa`, and only while the far side stands
    below `below_pa` (at datum). Where the datum of the far side differs, `opens_pa` has the difference in it, and may
    be less than nothing.
    """

    opens_pa: float = 0.0
    below_pa: float = math.inf


@dataclass(frozen=True, slots=True)
class Gate:
    """A one-way, conditional or shut passage of `part` from node `start` to node `end`.

    `forward` and `backward` say how water passes in each direction, None where it never does. `rise_pa` is
    what a booster adds from start to end; `is_shut` marks a shut valve, through which water passed once.
    """

    part: str
    start: Node
    end: Node
    forward: Way | None
    backward: Way | None
    rise_pa: float = 0.0
    is_shut: bool = False

    @property
    def is_joint(self) -> bool:
        """Whether it is a pump without a check: a pipe with a head, in which water goes either way."""
        return self.rise_pa > 0.0 and self.backward is not None


@dataclass(frozen=True, slots=True)
class Door:
    """A free passage that a hand can shut (a valve), or that joins hot and cold by accident (a crossover)."""

    part: str
    start: Node
    end: Node
    is_valve: bool


@dataclass(frozen=True, slots=True)
class Site:
    """An outlet at its node: `opens_pa` at datum, before the static pressure of its zone is known."""

    part: str
    node: Node
    outlet: Outlet
    opens_pa: float


@dataclass(frozen=True, slots=True)
class Piping:
    """Ports and what joins them.

    `ports` by node, `node_of` back again; `heads_pa` the static head of each node's height above datum, so
    that pressure at datum = pressure at the port + head; `free` joins nodes between which water passes both
    ways (pipes, doors and all other free passages). Of its edges `pipes` are those of the system's pipes, in their
    order, `doors` and `inner` those within parts.
    """

    system: System
    ports: list[End] = field(default_factory=list)
    node_of: dict[End, Node] = field(default_factory=dict)
    heads_pa: list[float] = field(default_factory=list)
    free: "nx.Graph[Node]" = field(default_factory=nx.Graph)
    inner: list[tuple[Node, Node]] = field(default_factory=list)
    pipes: list[tuple[Node, Node]] = field(default_factory=list)
    doors: list[Door] = field(default_factory=list)
    gates: list[Gate] = field(default_factory=list)

    @property
    def plain(self) -> list[tuple[Node, Node]]:
        """Nodes between which water passes both ways, and not through a door."""
        return [*self.inner, *self.pipes]

    def nodes_of(self, name: str) -> Iterator[Node]:
        """The nodes of a part, in the order of its ports."""
        for port in self.system.parts[name].port_names():
            yield self.node_of[End(name, port)]

    def sites(self) -> Iterator[Site]:
        """Every outlet of the system."""
        for name, part in self.system.parts.items():
            for outlet in part.outlets():
                node = self.node_of[End(name, outlet.port)]
                yield Site(name, node, outlet, outlet.opens_pa + self.heads_pa[node])


def piping_of(system: System, *, holding: Collection[str] = ()) -> Piping:
    """The piping of a system, in which the pumps `holding` let nothing back; cost is linear in its parts and pipes."""
    piping = Piping(system)
    for name, part in system.parts.items():
        _add_ports(piping, name, part)
    piping.free.add_nodes_from(range(len(piping.ports)))
    for name, part in system.parts.items():
        for passage in part.passages():
            _add_passage(piping, name, part, _held(part, passage) if name in holding else passage)
    piping.pipes.extend((piping.node_of[pipe.start], piping.node_of[pipe.end]) for pipe in system.pipes)
    piping.free.add_edges_from(piping.plain)
    piping.free.add_edges_from((door.start, door.end) for door in piping.doors)
    return piping


def _held(part: Part, passage: Passage) -> Passage:
    """A passage of a pump, with a check where it drives water."""
    match passage:
        case Free(a, b) if {a, b} == set(part.driven() or ()):
            return OneWay(*part.driven() or (a, b))
        case Boosting(a, b, rise_pa, _):
            return Boosting(a, b, rise_pa, checked=True)
        case _:
            return passage


def _add_ports(piping: Piping, name: str, part: Part) -> None:
    head_pa = PASCAL_PER_METRE * part.elevation_m
    for port in part.port_names():
        end = End(name, port)
        piping.node_of[end] = len(piping.ports)
        piping.ports.append(end)
        piping.heads_pa.append(head_pa)


def _add_passage(piping: Piping, name: str, part: Part, passage: Passage) -> None:
    node_of = piping.node_of
    match passage:
        case Free(a, b):
            start, end = node_of[End(name, a)], node_of[End(name, b)]
            if part.is_door():
                piping.doors.append(Door(name, start, end, part.is_valve()))
            else:
                piping.inner.append((start, end))
        case OneWay(a, b, opens_pa):
            start, end = node_of[End(name, a)], node_of[End(name, b)]
            piping.gates.append(Gate(name, start, end, Way(opens_pa), None))
        case Reducing(a, b, set_pa, bypass):
            start, end = node_of[End(name, a)], node_of[End(name, b)]
            forward = Way(below_pa=set_pa + piping.heads_pa[end])
            piping.gates.append(Gate(name, start, end, forward, Way() if bypass else None))
        case Boosting(a, b, rise_pa, checked):
            start, end = node_of[End(name, a)], node_of[End(name, b)]
            piping.gates.append(Gate(name, start, end, Way(), None if checked else Way(), rise_pa))
        case Shut(a, b):
            start, end = node_of[End(name, a)], node_of[End(name, b)]
            piping.gates.append(Gate(name, start, end, None, None, is_shut=True))
