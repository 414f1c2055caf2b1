"""The neighbourhood of a heater: what touches it through fittings alone, and which piping is its hot side."""

from collections.abc import Iterable, Iterator
from collections.abc import Set as AbstractSet

from plumbnet.network.graphs import all_reached, by_start, groups
from plumbnet.network.piping.piping import Node, Piping


def joined_parts(piping: Piping) -> list[frozenset[str]]:
    """For each node the parts that pipes and fittings alone join to it, its own among them; one set for all those.

    Linear.
    """
    group_of = touching(piping)
    members: list[set[str]] = [set() for _ in group_of]
    for (name, _), group in zip(piping.ports, group_of, strict=True):
        if not piping.system.parts[name].is_fitting:
            members[group].add(name)
    joined = list(map(frozenset, members))
    return [joined[group] for group in group_of]


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
    steps = list(_directed(piping, names))
    onward, back = by_start(steps), by_start((end, start) for start, end in steps)
    beyond, before = all_reached(outlets, onward), all_reached(inlets, back)
    return frozenset(beyond - before)


def _directed(piping: Piping, heaters: AbstractSet[str]) -> Iterator[tuple[Node, Node]]:
    """Pipes as drawn and every passage through a part, but none through a heater."""
    yield from piping.pipes
    yield from (step for step in _inner(piping) if piping.ports[step[0]].part not in heaters)


def _inner(piping: Piping) -> Iterator[tuple[Node, Node]]:
    for gate in piping.gates:
        yield gate.start, gate.end
    for start, end in [*piping.plain, *((door.start, door.end) for door in piping.doors)]:
        if piping.ports[start].part == piping.ports[end].part:
            yield start, end
            yield end, start
