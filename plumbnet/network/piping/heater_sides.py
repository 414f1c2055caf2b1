"""The neighbourhood of a heater: what touches it through fittings alone, and which piping is its hot side."""

from collections import deque
from collections.abc import Iterable, Iterator
from collections.abc import Set as AbstractSet

from plumbnet.network.graphs import groups
from plumbnet.network.piping.piping import Node, Piping


def joined_parts(piping: Piping) -> list[set[str]]:
    """For each node the parts that pipes and fittings alone join to it, its own among them. Linear."""
    group_of = touching(piping)
    members: list[set[str]] = [set() for _ in group_of]
    for (name, _), group in zip(piping.ports, group_of, strict=True):
        if not piping.system.parts[name].is_fitting:
            members[group].add(name)
    return [members[group] for group in group_of]


def touching(piping: Piping) -> list[int]:
    """The group of each node, where pipes alone join them; a fitting is one node. Linear."""
    return groups(len(piping.ports), piping.pipes)[0]


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

    for start, end in piping.pipes:
        add(start, end)
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
