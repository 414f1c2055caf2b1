"""Loops that a pump can drive with every fixture shut, and the water in them."""

import math
from collections import deque
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

import networkx as nx

from plumbnet.budgets import LOOPS, Budget
from plumbnet.layout.model import End
from plumbnet.network.graphs import blocks, dominators, under_one
from plumbnet.network.loops.cycles import Edge, FlowArc, Patience, on_ways_round, one_way, onward
from plumbnet.network.loops.reducer_lift import Hindrance, ReducerLift, lifting_of
from plumbnet.network.piping import Node, Piping

_MOST_STEPS = 1_000_000
"""Steps that trying ways round may cost for all pumps together."""


@dataclass(frozen=True, slots=True)
class Loop:
    """A circulation path that a pump drives.

    `parts` in the order in which the water meets them, the pump first; `nodes` are the ports in it, `pipes`
    the numbers of its pipes in the system, `onward` the steps from port to port as the pump drives the water.
    """

    parts: tuple[str, ...]
    nodes: frozenset[Node]
    pipes: tuple[int, ...]
    onward: frozenset[tuple[Node, Node]] = field(default=frozenset(), compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class HinderedPump:
    """A pump that would drive a loop but for a reducer in it; `head_helps` says that a greater head would."""

    pump: str
    why: Hindrance
    head_helps: bool


@dataclass(frozen=True, slots=True)
class Circulation:
    """The loops of a system, and the pumps that run and drive no loop; which of them reducers keep from it.

    Of pumps taken `whole` no more than that was sought, or not to the end: all that could go round with them, as far as
    that was sought, counts as their loop.
    """

    loops: tuple[Loop, ...]
    idle: tuple[str, ...]
    hindered: tuple[HinderedPump, ...] = ()
    whole: tuple[str, ...] = ()


def circulation(piping: Piping) -> Circulation:
    """Every loop that a running pump drives, whether or not anything heats it.

    A loop is a biconnected block of the piping in which water can go round in the pump's direction against
    no one-way device. One-way devices that no water could pass on its way round are taken out first, and the
    block is looked for again, until nothing changes. Near-linear for each pump but for that repetition; for all that
    come once the budget is spent together. No water goes round through a reducer behind which it does not come back
    with what stands there: see `reducer_lift`.
    """
    pumps = dict(_pumps(piping))
    if not pumps:
        return Circulation((), ())
    block_of = {arc: block for block in _blocks(_arcs(piping, pumps)) for arc in block}
    budget, patience, driven = Budget(LOOPS), Patience(_MOST_STEPS), dict[str, list[FlowArc]]()
    for name, pump in pumps.items():
        if budget.is_spent:
            break
        budget.spend(len(block_of.get(pump, ())))
        driven[name] = _driven(pump, block_of.get(pump, []), patience)
    found = _judged(piping, pumps, driven, patience)
    found = replace(found, whole=tuple(name for name in driven if pumps[name] in patience.ended_for))
    late = {name: pump for name, pump in pumps.items() if name not in driven}
    return _with_whole(piping, found, late, block_of) if late else found


def _judged(
    piping: Piping, pumps: Mapping[str, FlowArc], driven: dict[str, list[FlowArc]], patience: Patience
) -> Circulation:
    """The loops of what pumps would drive, less those that reducers keep them from."""
    reducing = {name: driven[name] for name in _through_reducers(piping, driven)}
    if not reducing:
        return _circulation(piping, pumps, driven)
    lifting, hindered = lifting_of(piping, reducing), list[HinderedPump]()
    for name, arcs in reducing.items():
        driven[name] = _driven(pumps[name], arcs, patience, lifting)
        if not driven[name]:
            hindered += _hindered(name, pumps[name], arcs, lifting)
    return replace(_circulation(piping, pumps, driven), hindered=tuple(hindered))


def _with_whole(
    piping: Piping, found: Circulation, late: Mapping[str, FlowArc], block_of: Mapping[FlowArc, list[FlowArc]]
) -> Circulation:
    """With the pumps of which no more was sought: the loop of each is all that could go round with it. Linear."""
    circle_of: dict[FlowArc, list[FlowArc]] = {}
    for block in {id(block_of[pump]): block_of[pump] for pump in late.values() if pump in block_of}.values():
        for circle in _circles(block):
            circle_of |= dict.fromkeys(circle, circle)
    driving = {name: circle_of[pump] for name, pump in late.items() if pump in circle_of}
    first: dict[int, str] = {}
    for name, circle in driving.items():
        first[id(circle)] = min(first.get(id(circle), name), name)
    loops = {loop.nodes: loop for loop in found.loops}
    for name in first.values():
        loop = _loop(piping, late[name], driving[name])
        loops.setdefault(loop.nodes, loop)
    idle = (*found.idle, *(name for name in late if name not in driving))
    return replace(found, loops=tuple(loops.values()), idle=idle, whole=(*found.whole, *driving))


def _circles(arcs: list[FlowArc]) -> Iterator[list[FlowArc]]:
    """The arcs that lie on some way round, those that hang together at a time."""
    number_of: dict[Node, int] = {}
    for number, nodes in enumerate(nx.strongly_connected_components(onward(arcs))):
        number_of |= dict.fromkeys(nodes, number)
    found: dict[int, list[FlowArc]] = {}
    for arc in arcs:
        if number_of[arc.start] == number_of[arc.end]:
            found.setdefault(number_of[arc.start], []).append(arc)
    yield from found.values()


def _pumps(piping: Piping) -> Iterator[tuple[str, FlowArc]]:
    """Every running pump."""
    for name, part in piping.system.parts.items():
        ends = part.driven()
        if ends is not None:
            start, end = (piping.node_of[End(name, port)] for port in ends)
            yield name, FlowArc(start, end)


def _circulation(piping: Piping, pumps: Mapping[str, FlowArc], driven: Mapping[str, list[FlowArc]]) -> Circulation:
    """The loops of the arcs that pumps drive, those of the same water once, told from the first pump by name."""
    loops: dict[frozenset[Node], Loop] = {}
    for name, arcs in driven.items():
        if arcs:
            loop = _loop(piping, pumps[name], arcs)
            loops[loop.nodes] = min(loops.get(loop.nodes, loop), loop, key=lambda each: each.parts)
    return Circulation(tuple(loops.values()), tuple(name for name, arcs in driven.items() if not arcs))


def _through_reducers(piping: Piping, driven: Mapping[str, list[FlowArc]]) -> Iterator[str]:
    """The pumps in whose loop a reducer stands."""
    gates = (gate for gate in piping.gates if gate.forward is not None and gate.forward.below_pa < math.inf)
    reducers = {(gate.start, gate.end) for gate in gates}
    for name, arcs in driven.items():
        if reducers and any((arc.start, arc.end) in reducers for arc in arcs):
            yield name


def _hindered(name: str, pump: FlowArc, arcs: list[FlowArc], lifting: ReducerLift) -> Iterator[HinderedPump]:
    """Why a pump drives nothing, told of the way round that the highest reducers stand in."""
    why = lifting.hindrance(lifting.easiest(arcs, pump))
    if why is not None:
        head_helps = bool(_driven(pump, arcs, Patience(_MOST_STEPS), lifting.with_any_head(pump)))
        yield HinderedPump(name, why, head_helps)


def _arcs(piping: Piping, pumps: Mapping[str, FlowArc]) -> Iterator[FlowArc]:
    """Every way from port to port that water can take while the pumps run: through a pump as it drives."""
    yield from pumps.values()
    for start, end in [*piping.inner, *((door.start, door.end) for door in piping.doors)]:
        if piping.ports[start].part not in pumps:
            yield FlowArc(start, end)
            yield FlowArc(end, start)
    for gate in piping.gates:
        if gate.forward is not None and gate.part not in pumps:
            yield FlowArc(gate.start, gate.end)
    for number, (start, end) in enumerate(piping.pipes):
        yield FlowArc(start, end, number)
        yield FlowArc(end, start, number)


def _blocks(arcs: Iterable[FlowArc]) -> Iterator[list[FlowArc]]:
    """The arcs of each biconnected block that holds a way round, sorted; arcs through one pipe are one link."""
    links: dict[tuple[Edge, int], list[FlowArc]] = {}
    for arc in arcs:
        links.setdefault((arc.edge, arc.pipe), []).append(arc)
    own = list(links.values())
    for block in blocks([edge for edge, _ in links]):
        yield sorted({arc for link in block for arc in own[link]})


def _driven(
    pump: FlowArc, arcs: list[FlowArc], patience: Patience, lifting: ReducerLift | None = None
) -> list[FlowArc]:
    """The arcs of the pump's loop within its block; none where no water can go round.

    An arc that is taken out here lies on no way round; where none can be found to take out, what is left is
    tried way by way.
    """
    while arcs:
        likely = arcs if lifting is None else lifting.likely(arcs, pump)
        ahead = _without_pockets(_going_round(likely, pump), pump)
        left: list[FlowArc] = next((block for block in _blocks(ahead) if pump in block), [])
        if len(left) == len(arcs):
            break
        arcs = left
    if lifting is None:
        return on_ways_round(arcs, pump, patience)
    return on_ways_round(arcs, pump, patience, lambda way: lifting.hindrance(way) is None)


def _going_round(arcs: list[FlowArc], pump: FlowArc) -> list[FlowArc]:
    """The arcs that water from the pump's outlet can take on its way back to the inlet; none if it cannot."""
    graph = onward(arc for arc in arcs if arc != pump)
    if pump.start not in graph or pump.end not in graph:
        return []
    ahead = nx.descendants(graph, pump.end) | {pump.end}
    behind = nx.ancestors(graph, pump.start) | {pump.start}
    if pump.start not in ahead:
        return []
    return [arc for arc in arcs if (arc.start in ahead and arc.end in behind) or arc == pump]


def _without_pockets(arcs: list[FlowArc], pump: FlowArc) -> list[FlowArc]:
    """The arcs less the one-way devices that water could pass only by meeting some place twice.

    So it is where every way to the device and every way on from it lead through one and the same node.
    """
    checks = one_way(arcs, pump)
    if not checks:
        return arcs
    graph = onward(arc for arc in arcs if arc != pump)
    before, after = dominators(graph.succ, pump.end), dominators(graph.pred, pump.start)
    pockets = under_one(before, after, ((arc.start, arc.end) for arc in checks))
    return [arc for arc in arcs if (arc.start, arc.end) not in pockets]


def _loop(piping: Piping, pump: FlowArc, arcs: list[FlowArc]) -> Loop:
    nodes = frozenset(node for arc in arcs for node in (arc.start, arc.end))
    pipes = sorted({arc.pipe for arc in arcs if arc.is_pipe})
    onward = frozenset((arc.start, arc.end) for arc in arcs)
    return Loop(tuple(_met_in_order(piping, arcs, pump)), nodes, tuple(pipes), onward)


def _met_in_order(piping: Piping, arcs: list[FlowArc], pump: FlowArc) -> Iterator[str]:
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
