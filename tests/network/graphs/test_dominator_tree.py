import sys
from itertools import product

import networkx as nx
from hypothesis import given, settings
from hypothesis import strategies as st

from plumbnet.network.graphs.dominator_tree import Tree, dominators, spans, under_one

EXAMPLES = settings(max_examples=150, deadline=None, derandomize=True, database=None)
PIPES = st.lists(st.tuples(st.integers(0, 9), st.integers(0, 9)), max_size=25)


def directed(pipes: list[tuple[int, int]]) -> "nx.DiGraph[int]":
    graph: nx.DiGraph[int] = nx.DiGraph(pipes)
    graph.add_nodes_from([0, 1])
    return graph


def standing_over(tree: Tree[int], node: int | None) -> set[int]:
    found = set()
    while node is not None:
        found.add(node)
        node = tree[node]
    return found


def test_every_way_to_a_tap_behind_two_branches_leads_through_the_street_alone() -> None:
    tree = dominators({"street": ["a", "b"], "a": ["tee"], "b": ["tee"], "tee": ["tap"]}, "street")
    assert tree == {"street": None, "a": "street", "b": "street", "tee": "street", "tap": "tee"}


@EXAMPLES
@given(PIPES)
def test_node_stands_over_another_if_without_it_the_other_is_out_of_reach(pipes: list[tuple[int, int]]) -> None:
    graph = directed(pipes)
    tree = dominators(graph.succ, 0)
    assert set(tree) == nx.descendants(graph, 0) | {0}
    for over, node in product(tree, tree):
        rest = graph.subgraph(set(graph) - {over})
        is_cut_off = over in {0, node} or not nx.has_path(rest, 0, node)
        assert (over in standing_over(tree, node)) == is_cut_off


@EXAMPLES
@given(PIPES)
def test_pairs_under_one_node_are_those_whose_lines_upwards_meet(pipes: list[tuple[int, int]]) -> None:
    graph = directed(pipes)
    before, after = dominators(graph.succ, 0), dominators(graph.pred, 1)
    pairs = list(product(before, after))
    expected = {pair for pair in pairs if standing_over(before, pair[0]) & standing_over(after, pair[1])}
    assert under_one(before, after, pairs) == expected


def test_ten_thousand_valves_in_a_row_overflow_nothing() -> None:
    tree = dominators({node: [node + 1] for node in range(10_000)}, 0)
    assert sys.getrecursionlimit() < 10_000
    assert tree[10_000] == 9_999


def test_taps_fed_from_two_mains_stand_under_the_street_and_under_neither_main() -> None:
    # street - a - tap1, tap2; and street - b - c - tap1, tap2
    pipes = {"street": ["a", "b"], "a": ["tap1", "tap2"], "b": ["c"], "c": ["tap1", "tap2"]}
    over = dominators(pipes, "street")
    assert (over["tap1"], over["tap2"], over["c"]) == ("street", "street", "b")


@EXAMPLES
@given(PIPES)
def test_node_stands_over_those_within_its_span_and_over_no_others(pipes: list[tuple[int, int]]) -> None:
    tree = dominators(directed(pipes).succ, 0)
    span = spans(tree)
    for over, node in product(tree, tree):
        assert (span[over][0] <= span[node][0] < span[over][1]) is (over in standing_over(tree, node))
