"""Volumes that enter, pass and leave a graph, to the nodes that still have water to give after a maximum flow."""

import math
from collections import deque
from collections.abc import Callable, Collection, Hashable, Iterable
from typing import TypeVar

Thing = TypeVar("Thing", bound=Hashable)

_GRAIN_M3 = 1e-18
"""Flows are counted in whole grains, so that a cut is exact."""
_SOURCE, _SINK = 0, 1


class FlowGraph:
    """A flow network in whole grains, from a common source to a common sink.

    Its own since that of the graph library takes nearly all the time of a building with some hundred zones, which
    are no more than numbers. Every arc is followed by its opposite: numbers 2 n and 2 n + 1 belong together.
    """

    def __init__(self) -> None:
        self._node_of: dict[object, int] = {}
        self._arcs: list[list[int]] = [[], []]
        self._heads: list[int] = []
        self._left: list[float] = []
        self._arc_of: dict[tuple[int, int], int] = {}

    def supply(self, node: object, volume_m3: float) -> None:
        """Let a volume enter at a node, beside what enters there already."""
        self._left[self._arc(_SOURCE, self._node(node))] += _grains(volume_m3)

    def drain(self, node: object, volume_m3: float) -> None:
        """Let up to a volume leave at a node, beside what leaves there already; any amount if it is infinite."""
        self._left[self._arc(self._node(node), _SINK)] += _grains(volume_m3)

    def join(self, start: object, end: object, volume_m3: float = math.inf) -> None:
        """Let up to a volume pass from one node to another; any amount if it is infinite."""
        self._left[self._arc(self._node(start), self._node(end))] = _grains(volume_m3)

    def surplus(self) -> set[object]:
        """Nodes that still have water to give after a maximum flow: the source side of the smallest cut.

        Source: Dinitz 1970 (from memory). Whatever maximum flow is found, the set is the same.
        """
        while True:
            depths = self._depths()
            if depths[_SINK] < 0:
                return {node for node, number in self._node_of.items() if depths[number] >= 0}
            self._fill(depths)

    def _node(self, node: object) -> int:
        if node not in self._node_of:
            self._node_of[node] = len(self._arcs)
            self._arcs.append([])
        return self._node_of[node]

    def _arc(self, start: int, end: int) -> int:
        if (start, end) not in self._arc_of:
            number = len(self._heads)
            self._arc_of[start, end] = number
            self._heads += (end, start)
            self._left += (0, 0)
            self._arcs[start].append(number)
            self._arcs[end].append(number + 1)
        return self._arc_of[start, end]

    def _depths(self) -> list[int]:
        """How many arcs with room lead from the source to each node; below zero where none do."""
        depths = [-1] * len(self._arcs)
        depths[_SOURCE] = 0
        queue = deque([_SOURCE])
        while queue:
            node = queue.popleft()
            for arc in self._arcs[node]:
                far = self._heads[arc]
                if depths[far] < 0 and self._left[arc] > 0:
                    depths[far] = depths[node] + 1
                    queue.append(far)
        return depths

    def _fill(self, depths: list[int]) -> None:
        """Push what can pass by arcs that lead one step deeper, until none of these ways has room."""
        untried = [list(arcs) for arcs in self._arcs]
        way: list[int] = []
        node = _SOURCE
        while True:
            onward = self._onward(node, untried[node], depths)
            if onward is not None:
                way.append(onward)
                node = self._heads[onward]
            elif way:
                node = self._heads[way.pop() ^ 1]
                untried[node].pop()
            else:
                return
            if node == _SINK:
                self._push(way)
                way, node = [], _SOURCE

    def _onward(self, node: int, untried: list[int], depths: list[int]) -> int | None:
        """An arc of a node with room, one step deeper; what leads on no more is tried no more."""
        while untried:
            arc = untried[-1]
            if self._left[arc] > 0 and depths[self._heads[arc]] == depths[node] + 1:
                return arc
            untried.pop()
        return None

    def _push(self, way: list[int]) -> None:
        """Push what a way from the source to the sink has room for."""
        grains = min(self._left[arc] for arc in way)
        for arc in way:
            self._left[arc] -= grains
            self._left[arc ^ 1] += grains


def nodes_of(
    things: Iterable[Thing], joins: Collection[tuple[Thing, Thing]], gives: Callable[[Thing], bool]
) -> dict[Thing, Hashable]:
    """The node of a flow that each thing is: its own, that of what alone stands before it, or one for like dead ends.

    Exact where joins let any volume pass and whatever has one to give `gives`: what gives nothing and is come to from
    one node only has its room filled from there, and water left just where that has; so have dead ends behind the same
    nodes. A hotel has a hundred such, behind its mixing valves. What stands in a circle of joins is its own node.
    """
    before: dict[Thing, set[Thing]] = {thing: set() for thing in things}
    beyond: dict[Thing, list[Thing]] = {}
    for near, far in joins:
        before[far].add(near)
    for far, nears in before.items():
        for near in nears:
            beyond.setdefault(near, []).append(far)
    found: dict[Thing, Hashable] = {}
    left = {thing: len(nears) for thing, nears in before.items()}
    queue = deque(thing for thing, count in left.items() if not count)
    while queue:
        thing = queue.popleft()
        nodes = frozenset(found[near] for near in before[thing])
        if not nodes or gives(thing):
            found[thing] = thing
        elif len(nodes) == 1:
            found[thing] = next(iter(nodes))
        else:
            found[thing] = thing if thing in beyond else ("ends", nodes)
        for far in beyond.get(thing, ()):
            left[far] -= 1
            if not left[far]:
                queue.append(far)
    return {thing: found.get(thing, thing) for thing in before}


def _grains(volume_m3: float) -> float:
    return round(volume_m3 / _GRAIN_M3) if math.isfinite(volume_m3) else volume_m3
