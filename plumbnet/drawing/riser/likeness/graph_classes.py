"""Labelled graphs to classes of those that are alike: labels refined round by round, then compared node by node."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence

import networkx as nx
from networkx.algorithms.isomorphism import MultiDiGraphMatcher, categorical_multiedge_match, categorical_node_match

_MOST_ROUNDS = 40


def graph_classes(graphs: Sequence["nx.MultiDiGraph[str]"]) -> list[int]:
    """For each graph the number of the first that is the same but for the names of its nodes.

    Labels are refined by those of their neighbours (Weisfeiler and Leman, in one dimension), which tells nearly all
    apart; what is left alike is confirmed edge by edge, or by an exact search (VF2 of networkx), never taken on trust.
    """
    keys = _refined(graphs)
    seen: dict[tuple[int, ...], list[int]] = defaultdict(list)
    found: list[int] = []
    for number, graph in enumerate(graphs):
        alike = seen[keys[number]]
        first = next((each for each in alike if _is_same(graphs[each], graph)), number)
        if first == number:
            alike.append(number)
        found.append(first)
    return found


def _refined(graphs: Sequence["nx.MultiDiGraph[str]"]) -> list[tuple[int, ...]]:
    """The labels of each graph in the end, sorted; written into its nodes as `refined` as well."""
    known: dict[object, int] = {}
    now = [{node: _numbered(known, label) for node, label in graph.nodes(data="label")} for graph in graphs]
    count = 0
    for _ in range(_MOST_ROUNDS):
        distinct = len({label for labels in now for label in labels.values()})
        if distinct == count:
            break
        count = distinct
        known = {}
        now = [
            {node: _numbered(known, _signature(graph, labels, node)) for node in graph}
            for graph, labels in zip(graphs, now, strict=True)
        ]
    for graph, labels in zip(graphs, now, strict=True):
        nx.set_node_attributes(graph, labels, "refined")
    return [tuple(sorted(labels.values())) for labels in now]


def _numbered(known: dict[object, int], label: object) -> int:
    return known.setdefault(label, len(known))


def _signature(graph: "nx.MultiDiGraph[str]", labels: Mapping[str, int], node: str) -> object:
    out = sorted((data["label"], labels[other]) for _, other, data in graph.out_edges(node, data=True))
    back = sorted((data["label"], labels[other]) for other, _, data in graph.in_edges(node, data=True))
    return labels[node], tuple(out), tuple(back)


def _is_same(one: "nx.MultiDiGraph[str]", other: "nx.MultiDiGraph[str]") -> bool:
    """Whether two graphs of the same refined labels are one; labels that tell all nodes apart say which is which."""
    if len({label for _, label in one.nodes(data="refined")}) == len(one):
        return _joined(one) == _joined(other)
    nodes, edges = (
        categorical_node_match(["label", "refined"], [None, None]),
        categorical_multiedge_match("label", None),
    )
    matcher = MultiDiGraphMatcher(one, other, node_match=nodes, edge_match=edges)
    return bool(matcher.is_isomorphic())


def _joined(graph: "nx.MultiDiGraph[str]") -> Counter[object]:
    """The edges by the refined labels of their ends."""
    refined = nx.get_node_attributes(graph, "refined")
    return Counter((refined[start], refined[end], data["label"]) for start, end, data in graph.edges(data=True))
