"""The neighbourhood of a heater: what touches it through fittings alone, and which piping is its hot side."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import cached_property

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


@dataclass(frozen=True)
class HeaterSides:
    """Which piping is the hot side of heaters and which their cold pipe, in the direction the author drew the pipes.

    `stores` are the inlet and outlet nodes of the heaters.
    """

    piping: Piping
    stores: Sequence[tuple[Node, Node]]

    @cached_property
    def hot(self) -> frozenset[Node]:
        """Nodes that hot water reaches, up to the next heater.

        Piping that leads back to an inlet, such as the return of a circulation, is not counted. Linear.
        """
        leading_back = all_reached([inlet for inlet, _ in self.stores], self._back)
        return self._warmed - leading_back

    def hangs_hot(self, node: Node) -> bool:
        """Whether what hangs at a node hangs where warmed water comes past, on its way to another heater too.

        However its branch was drawn, it hangs where the branch leaves what goes on.
        """
        return self._leaves_at(node) in self._warmed

    def feeds_hot(self, node: Node) -> bool:
        """Whether a node lies on the cold pipe of a heater that carries what another one has warmed. Linear.

        The cold pipe of a heater is one to which its own water does not come.
        """
        if node not in self._warmed or node in self.hot:
            return False
        ahead, behind = all_reached([node], self._onward), all_reached([node], self._back)
        return any(inlet in ahead and outlet not in behind for inlet, outlet in self.stores)

    def _leaves_at(self, node: Node) -> Node:
        """Where the branch that ends at a node leaves: the first place from which there is more than one way on."""
        before, at = node, node
        while len(ways := self._beside[at] - {before}) == 1:
            before, at = at, *ways
            if at == node:  # round in a ring from which nothing leaves
                break
        return at

    @cached_property
    def _warmed(self) -> frozenset[Node]:
        outlets = [outlet for _, outlet in self.stores]
        return frozenset(all_reached(outlets, self._onward))

    @cached_property
    def _steps(self) -> list[tuple[Node, Node]]:
        return list(_directed(self.piping, {self.piping.ports[inlet].part for inlet, _ in self.stores}))

    @cached_property
    def _onward(self) -> Mapping[Node, Sequence[Node]]:
        return by_start(self._steps)

    @cached_property
    def _back(self) -> Mapping[Node, Sequence[Node]]:
        return by_start((end, start) for start, end in self._steps)

    @cached_property
    def _beside(self) -> Mapping[Node, set[Node]]:
        found: dict[Node, set[Node]] = defaultdict(set)
        for start, end in self._steps:
            found[start].add(end)
            found[end].add(start)
        return found


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
