"""The neighbourhood of a heater: what touches it through fittings alone, and which piping is its hot side."""

from collections import deque
from collections.abc import Iterable, Iterator
from collections.abc import Set as AbstractSet

from networkx.utils import UnionFind

from plumbnet.network.piping import Node, Piping


def neighbours(piping: Piping, nodes: Iterable[Node]) -> dict[Node, frozenset[str]]:
    """For each of `nodes` the parts that pipes and fittings alone join it to, its own part left out.

    Linear in the piping, but for the size of the answer.
    """
    joined = touching(piping)
    members: dict[Node, set[str]] = {}
    for node, (name, _) in enumerate(piping.ports):
        if not piping.system.parts[name].is_fitting:
            members.setdefault(joined[node], set()).add(name)
    return {node: frozenset(members[joined[node]] - {piping.ports[node].part}) for node in nodes}


def touching(piping: Piping) -> "UnionFind[Node]":
    """Nodes joined by pipes alone; a fitting is one node. Linear."""
    joined: UnionFind[Node] = UnionFind()
    for pipe in piping.system.pipes:
        joined.union(piping.node_of[pipe.start], piping.node_of[pipe.end])
    return joined


def hot_side(piping: Piping, stores: Iterable[tuple[Node, Node]]) -> frozenset[Node]:
    """Nodes that hot water reaches in the direction the author drew the pipes, up to the next heater.

    `stores` are the inlet and outlet nodes of the heaters. Piping that leads back to an inlet, such as the
    return of a circulation, is not counted. Linear.
    """
    stores = list(stores)
    inlets, outlets = {inlet for inlet, _ in stores}, {outlet for _, outlet in stores}
    names = {piping.ports[inlet].part for inlet in inlets}
    onward, back = _directed(piping, names)
    return frozenset(_reached(outlets, onward) - _reached(inlets, back))


def _directed(piping: Piping, heaters: AbstractSet[str]) -> tuple[dict[Node, list[Node]], dict[Node, list[Node]]]:
    """Pipes as drawn and every passage through a part, but none through a heater; and the same reversed."""
    onward: dict[Node, list[Node]] = {}
    back: dict[Node, list[Node]] = {}

    def add(start: Node, end: Node) -> None:
        onward.setdefault(start, []).append(end)
        back.setdefault(end, []).append(start)

    for pipe in piping.system.pipes:
        add(piping.node_of[pipe.start], piping.node_of[pipe.end])
    for start, end in _inner(piping):
        if piping.ports[start].part not in heaters:
            add(start, end)
    return onward, back


def _inner(piping: Piping) -> Iterator[tuple[Node, Node]]:
    for gate in piping.gates:
        yield gate.start, gate.end
    for start, end in [*piping.plain, *((door.start, door.end) for door in piping.doors)]:
        if piping.ports[start].part == piping.ports[end].part:
            yield start, end
            yield end, start


def _reached(starts: AbstractSet[Node], onward: dict[Node, list[Node]]) -> set[Node]:
    reached, queue = set(starts), deque(sorted(starts))
    while queue:
        for node in onward.get(queue.popleft(), []):
            if node not in reached:
                reached.add(node)
                queue.append(node)
    return reached
