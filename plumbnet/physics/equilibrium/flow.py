"""Volumes that enter, pass and leave a graph, to the nodes that still have water to give after a maximum flow."""

import math

import networkx as nx
from networkx.algorithms.flow import edmonds_karp

_GRAIN_M3 = 1e-18
"""Flows are counted in whole grains, so that a cut is exact."""
_SOURCE, _SINK = "source", "sink"


class FlowGraph:
    """A flow network in whole grains, from a common source to a common sink."""

    def __init__(self) -> None:
        self._graph: nx.DiGraph[object] = nx.DiGraph()
        self._graph.add_nodes_from((_SOURCE, _SINK))

    def supply(self, node: object, volume_m3: float) -> None:
        """Let a volume enter at a node, beside what enters there already."""
        grains = round(volume_m3 / _GRAIN_M3)
        before = self._graph.edges[_SOURCE, node]["capacity"] if self._graph.has_edge(_SOURCE, node) else 0
        self._graph.add_edge(_SOURCE, node, capacity=before + grains)

    def drain(self, node: object, volume_m3: float) -> None:
        """Let up to a volume leave at a node; any amount if it is infinite."""
        self.join(node, _SINK, volume_m3)

    def join(self, start: object, end: object, volume_m3: float = math.inf) -> None:
        """Let up to a volume pass from one node to another; any amount if it is infinite."""
        if math.isfinite(volume_m3):
            self._graph.add_edge(start, end, capacity=round(volume_m3 / _GRAIN_M3))
        else:
            self._graph.add_edge(start, end)

    def surplus(self) -> set[object]:
        """Nodes that still have water to give after a maximum flow: the source side of the smallest cut.

        Source: Edmonds and Karp 1972, by the library.
        """
        residual = edmonds_karp(self._graph, _SOURCE, _SINK)
        left: nx.DiGraph[object] = nx.DiGraph()
        left.add_node(_SOURCE)
        for start, end, edge in residual.edges(data=True):
            if edge["flow"] < edge["capacity"]:
                left.add_edge(start, end)
        return set(nx.descendants(left, _SOURCE))
