"""Ways between nodes within free piping, as the names of the parts that water meets."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import groupby

import networkx as nx

from plumbnet.network.outlets.ladder import Rung
from plumbnet.network.piping import Node, Piping


@dataclass
class Paths:
    """Shortest ways; those to a node that many ask for are found once for all of its zone."""

    piping: Piping
    _toward: dict[Node, dict[Node, Node]] = field(default_factory=dict)

    def to_rung(self, start: Node, rung: Rung) -> tuple[str, ...]:
        """Names of the parts from the node `start` to an outlet, both included."""
        nodes: list[Node] = []
        at = start
        for crossing in rung.crossings:
            nodes += self._steps(at, crossing.leaves)
            at = crossing.enters
        nodes += self._steps(at, rung.site.node)
        return tuple(name for name, _ in groupby(self.piping.ports[node].part for node in nodes))

    def _steps(self, start: Node, goal: Node) -> list[Node]:
        near = self._near(start, goal)
        if near is not None:
            return near
        if goal not in self._toward:
            found = nx.bfs_predecessors(self.piping.free, goal, sort_neighbors=self._by_name)
            self._toward[goal] = dict(found)
        toward = self._toward[goal]
        steps = [start]
        while steps[-1] != goal:
            steps.append(toward[steps[-1]])
        return steps

    def _near(self, start: Node, goal: Node) -> list[Node] | None:
        """The way where it is at most two steps, as from a heater to its own relief valve; else None."""
        free = self.piping.free
        if start == goal or goal in free[start]:
            return [start, goal]
        between = self._by_name(node for node in free[start] if goal in free[node])
        return [start, between[0], goal] if between else None

    def _by_name(self, nodes: Iterable[Node]) -> list[Node]:
        """Nodes by part and port, so that of ways of one length the order of the file chooses none."""
        return sorted(nodes, key=self.piping.ports.__getitem__)
