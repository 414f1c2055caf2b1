"""Loops that a pump can drive with every fixture shut, and the water in them."""

from collections import defaultdict, deque
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

import networkx as nx

from plumbnet.layout.part import Boosting, Free, OneWay, Passage, Reducing, Shut
from plumbnet.layout.system import End
from plumbnet.network.piping import Node, Piping


class Arc(NamedTuple):
    """A way from port to port: through the pipe of that number, or inside a part where there is none."""

    start: Node
    end: Node
    pipe: int = -1

    @property
    def is_pipe(self) -> bool:
        """Whether it runs through a pipe."""
        return self.pipe >= 0


Member = Node | tuple[str, int]
"""A body of water, by its first node, or a pipe, by its number."""


@dataclass(frozen=True, slots=True)
class Loop:
    """A circulation path that a pump drives.

    `parts` in the order in which the water meets them, the pump first; `nodes` are the ports in it, `pipes`
    the numbers of its pipes in the system.
    """

    parts: tuple[str, ...]
    nodes: frozenset[Node]
    pipes: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Circulation:
    """The loops of a system, and the pumps that run and drive no loop."""

    loops: tuple[Loop, ...]
    idle: tuple[str, ...]


def circulation(piping: Piping) -> Circulation:
    """Every loop that a running pump drives, whether or not anything heats it.

    A loop is a biconnected block of the piping in which water can go round in the pump's direction against
    no one-way device. One-way devices that no water could pass on its way round are taken out first, and the
    block is looked for again, until nothing changes. Linear but for that repetition.
    """
    pumps = {name: ends for name, part in piping.system.parts.items() if (ends := part.driven()) is not None}
    if not pumps:
        return Circulation((), ())
    bodies = _Bodies(piping)
    loops: dict[frozenset[Node], Loop] = {}
    idle: list[str] = []
    block_of = {member: block for block in _blocks(bodies, bodies.arcs) for member in block}
    for name, (start, end) in pumps.items():
        pump = Arc(piping.node_of[End(name, start)], piping.node_of[End(name, end)])
        block = block_of.get(bodies.body_of[pump.start])
        arcs = _driven(bodies, pump, block) if block is not None else None
        if arcs is None:
            idle.append(name)
        else:
            loop = _loop(piping, pump, arcs)
            loops.setdefault(loop.nodes, loop)
    return Circulation(tuple(loops.values()), tuple(idle))


@dataclass
class _Bodies:
    """Parts as bodies of water: the ports of a part that any passage joins are one body.

    `body_of` gives each port's body, `arcs` every way from port to port, `arcs_in` those of each member.
    """

    piping: Piping
    body_of: dict[Node, Node] = field(default_factory=dict)
    arcs: list[Arc] = field(default_factory=list)
    arcs_in: dict[Member, list[Arc]] = field(default_factory=lambda: defaultdict(list))

    def __post_init__(self) -> None:
        for name, part in self.piping.system.parts.items():
            self._add_part(name, list(part.passages()), part.driven())
        for number, pipe in enumerate(self.piping.system.pipes):
            start, end = self.piping.node_of[pipe.start], self.piping.node_of[pipe.end]
            self._add_arcs([Arc(start, end, number), Arc(end, start, number)])

    def _add_part(self, name: str, passages: list[Passage], driven: tuple[str, str] | None) -> None:
        nodes = dict(zip(self.piping.system.parts[name].port_names(), self.piping.nodes_of(name), strict=True))
        joined: nx.Graph[Node] = nx.Graph()
        joined.add_nodes_from(nodes.values())
        ways = [driven] if driven is not None else [way for passage in passages for way in _ways(passage)]
        arcs = [Arc(nodes[a], nodes[b]) for a, b in ways]
        joined.add_edges_from((arc.start, arc.end) for arc in arcs)
        for body in nx.connected_components(joined):
            self.body_of |= dict.fromkeys(body, min(body))
        self._add_arcs(arcs)

    def _add_arcs(self, arcs: list[Arc]) -> None:
        self.arcs += arcs
        for arc in arcs:
            self.arcs_in[self.member(arc)].append(arc)

    def member(self, arc: Arc) -> Member:
        """The pipe or the body that an arc runs in."""
        return ("pipe", arc.pipe) if arc.is_pipe else self.body_of[arc.start]


def _ways(passage: Passage) -> Iterator[tuple[str, str]]:
    match passage:
        case Free(a, b):
            yield (a, b)
            yield (b, a)
        case OneWay(inlet, outlet, _):
            yield (inlet, outlet)
        case Reducing(inlet, outlet, _, _) | Boosting(inlet, outlet, _, _):
            yield (inlet, outlet)
        case Shut():
            return


def _blocks(bodies: _Bodies, arcs: Iterable[Arc]) -> Iterator[set[Member]]:
    """Biconnected blocks that hold a way round.

    Each pipe is a node, so that two pipes between two bodies differ; a block of one edge is a bridge.
    """
    graph: nx.Graph[Member] = nx.Graph()
    for arc in arcs:
        if arc.is_pipe:
            graph.add_edge(bodies.body_of[arc.start], bodies.member(arc))
            graph.add_edge(bodies.member(arc), bodies.body_of[arc.end])
    for edges in nx.biconnected_component_edges(graph):
        if len(edges) > 1:
            yield {member for edge in edges for member in edge}


def _driven(bodies: _Bodies, pump: Arc, block: set[Member]) -> list[Arc] | None:
    """The arcs of the pump's loop; None where no water can go round.

    An arc that is taken out here lies on no way round; where none can be found to take out, what is left is
    taken as the loop. Only with one-way devices set against each other inside one block could that be too much.
    """
    arcs = sorted(arc for member in block for arc in bodies.arcs_in[member])
    while True:
        round_trip = _going_round(arcs, pump)
        if round_trip is None:
            return None
        ahead = _without_pockets(round_trip, pump)
        blocks = _blocks(bodies, ahead)
        inlet = bodies.body_of[pump.start]
        smaller: set[Member] = next((members for members in blocks if inlet in members), set())
        left = [arc for arc in ahead if bodies.member(arc) in smaller]
        if len(left) == len(arcs):
            return arcs
        arcs = left


def _going_round(arcs: list[Arc], pump: Arc) -> list[Arc] | None:
    """The arcs that water from the pump's outlet can take on its way back to the inlet; None if it cannot."""
    graph = _onward(arc for arc in arcs if arc != pump)
    if pump.start not in graph or pump.end not in graph:
        return None
    ahead = nx.descendants(graph, pump.end) | {pump.end}
    behind = nx.ancestors(graph, pump.start) | {pump.start}
    if pump.start not in ahead:
        return None
    return [arc for arc in arcs if (arc.start in ahead and arc.end in behind) or arc == pump]


def _without_pockets(arcs: list[Arc], pump: Arc) -> list[Arc]:
    """The arcs less the one-way devices that water could pass only by meeting some place twice.

    So it is where every way to the device and every way on from it lead through one and the same node.
    """
    graph = _onward(arc for arc in arcs if arc != pump)
    both_ways = {(arc.start, arc.end) for arc in arcs}
    one_way = [arc for arc in arcs if arc != pump and (arc.end, arc.start) not in both_ways]
    if not one_way:
        return arcs
    before = nx.immediate_dominators(graph, pump.end)
    after = nx.immediate_dominators(graph.reverse(copy=False), pump.start)
    pockets = {arc for arc in one_way if not set(_up(before, arc.start)).isdisjoint(_up(after, arc.end))}
    return [arc for arc in arcs if arc not in pockets]


def _up(tree: dict[Node, Node | None], node: Node | None) -> Iterator[Node]:
    """A node and all that stand above it in a tree of dominators; the library may end it in a circle or in None."""
    last = None
    while node is not None and node != last:
        yield node
        last, node = node, tree.get(node)


def _onward(arcs: Iterable[Arc]) -> "nx.DiGraph[Node]":
    return nx.DiGraph((arc.start, arc.end) for arc in arcs)


def _loop(piping: Piping, pump: Arc, arcs: list[Arc]) -> Loop:
    nodes = frozenset(node for arc in arcs for node in (arc.start, arc.end))
    pipes = sorted({arc.pipe for arc in arcs if arc.is_pipe})
    return Loop(tuple(_met_in_order(piping, arcs, pump)), nodes, tuple(pipes))


def _met_in_order(piping: Piping, arcs: list[Arc], pump: Arc) -> Iterator[str]:
    """Names of the parts as water from the pump meets them, nearest first."""
    onward: dict[Node, list[Node]] = {}
    for arc in sorted(arcs):
        onward.setdefault(arc.start, []).append(arc.end)
    met = dict.fromkeys([piping.ports[pump.start].part])
    seen, queue = {pump.start, pump.end}, deque([pump.end])
    while queue:
        node = queue.popleft()
        met.setdefault(piping.ports[node].part)
        for beyond in onward.get(node, []):
            if beyond not in seen:
                seen.add(beyond)
                queue.append(beyond)
    yield from met
