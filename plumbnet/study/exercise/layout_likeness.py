"""A layout to a key that is the same for two layouts which differ in nothing but names and order."""

import networkx as nx

from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Change, System

_Node = str | int | tuple[int, int]
"""A part, a pipe, or one end of a pipe."""
_ROUNDS = 4
"""Steps along the piping from which a part's surroundings are told apart."""


def likeness(system: System, changes: tuple[Change, ...] = ()) -> str:
    """The key; layouts with different keys differ in more than names, the converse all but always.

    Method: Weisfeiler and Lehman's colour refinement over parts, ports and pipes.
    """
    graph: nx.Graph[_Node] = nx.Graph()
    for name, part in system.parts.items():
        graph.add_node(name, what=f"{part.kind} {part.model_dump_json()} {_acts(name, changes)}")
    for number, pipe in enumerate(system.pipes):
        graph.add_node(number, what=f"pipe {pipe.volume_m3:.9g}")
        for side, end in enumerate(pipe.ends):
            graph.add_node((number, side), what=end.port)
            graph.add_edges_from([(number, (number, side)), ((number, side), end.part)])
    key: str = nx.weisfeiler_lehman_graph_hash(graph, node_attr="what", iterations=_ROUNDS)
    return key


def _acts(name: str, changes: tuple[Change, ...]) -> list[str]:
    """What the changes do to a part, without its name."""
    found: list[str] = []
    for one in changes:
        for action, value in change_fields(one).items():
            fields = {"part": value} if isinstance(value, str) else dict(value) if isinstance(value, dict) else {}
            if fields.pop("part", None) == name:
                found.append(f"{action} {sorted(fields.items())}")
    return found
