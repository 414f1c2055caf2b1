"""Parts and pipes that stand alike in a layout whatever their pipes hold, and the layout with those pipes made equal.

Where every heater's growth is held by tanks, more heated water brings no pressure down: each zone rises with what
grows in it and with what is pushed into it, and nothing that grows is let out. So what changes nothing where each pipe
holds as much as the largest that corresponds to it, changes nothing where some hold less. Source: own derivation, for
layouts in which no growth goes back to a main; the tests hold folded sweeps against others.
"""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import networkx as nx

from plumbnet.layout.model import Pipe, System

_DEEP = 24
"""Steps over which surroundings are compared, two to a pipe; whatever their number, what is found may be trusted."""


@dataclass(frozen=True)
class Correspondence:
    """Which parts and pipes of a layout correspond: each has a label, equal for those that do."""

    system: System

    @cached_property
    def parts(self) -> Mapping[str, str]:
        """The label of each part, by its name."""
        return {name: self._refined[name, -1] for name in self.system.parts}

    def levelled(self) -> System:
        """The layout with each pipe like the largest of those that correspond; the very same where all are so."""
        largest: dict[str, Pipe] = {}
        for number, pipe in enumerate(self.system.pipes):
            label = self._refined["", number]
            largest[label] = max(largest.get(label, pipe), pipe, key=lambda one: one.volume_m3)
        pipes = tuple(
            replace(pipe, volume_m3=like.volume_m3, length_m=like.length_m, tube=like.tube)
            for number, pipe in enumerate(self.system.pipes)
            for like in [largest[self._refined["", number]]]
        )
        return self.system if pipes == self.system.pipes else replace(self.system, pipes=pipes)

    @cached_property
    def _refined(self) -> Mapping[tuple[str, int], str]:
        """What surrounds each part and each pipe, the pipe's contents apart; pipes by their numbers.

        Source: colour refinement (Weisfeiler and Leman), by the library.
        """
        graph: nx.Graph[tuple[str, int]] = nx.Graph()
        for name, part in self.system.parts.items():
            graph.add_node((name, -1), look=repr(part))
        for number, pipe in enumerate(self.system.pipes):
            graph.add_node(("", number), look="")
            joints: dict[str, list[str]] = defaultdict(list)
            for end, words in zip(pipe.ends, ("from", "to"), strict=True):
                joints[end.part].append(f"{words} {end.port}")
            for name, ports in joints.items():
                graph.add_edge((name, -1), ("", number), port=" ".join(ports))
        steps = nx.weisfeiler_lehman_subgraph_hashes(
            graph, edge_attr="port", node_attr="look", iterations=_DEEP, digest_size=16
        )
        return {node: hashes[-1] for node, hashes in steps.items()}
