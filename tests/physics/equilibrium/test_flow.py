import math
from random import Random

import networkx as nx
import pytest
from networkx.algorithms.flow import edmonds_karp

from plumbnet.physics.equilibrium.flow import FlowGraph

GRAIN_M3 = 1e-18


def surplus(supplies: dict[str, float], drains: dict[str, float], pipes: dict[tuple[str, str], float]) -> set[object]:
    graph = FlowGraph()
    for node, volume in supplies.items():
        graph.supply(node, volume)
    for node, volume in drains.items():
        graph.drain(node, volume)
    for (start, end), volume in pipes.items():
        graph.join(start, end, volume)
    return graph.surplus()


def test_water_that_finds_room_leaves_no_surplus() -> None:
    assert surplus({"a": 0.01}, {"b": 0.01}, {("a", "b"): math.inf}) == set()


def test_water_beyond_the_room_is_left_at_both_ends_of_an_open_pipe() -> None:
    assert surplus({"a": 0.011}, {"b": 0.01}, {("a", "b"): math.inf}) == {"a", "b"}


def test_pipe_that_carries_too_little_leaves_the_surplus_before_it() -> None:
    assert surplus({"a": 0.011}, {"b": 0.02}, {("a", "b"): 0.01}) == {"a"}


def test_water_does_not_run_back_through_a_pipe() -> None:
    assert surplus({"b": 0.01}, {"a": 0.01}, {("a", "b"): math.inf}) == {"b"}


def test_water_makes_way_for_what_has_no_other() -> None:
    # one can go to common or own, two to common only
    supplies, drains = {"one": 1.0, "two": 1.0}, {"common": 1.0, "own": 1.0}
    pipes = {("one", "common"): math.inf, ("one", "own"): math.inf, ("two", "common"): math.inf}
    assert surplus(supplies, drains, pipes) == set()
    assert surplus(supplies, {"common": 1.0, "own": 0.5}, pipes) == {"one", "two", "common", "own"}


def test_drain_without_bound_takes_everything() -> None:
    assert surplus({"a": 1e6}, {"a": math.inf}, {}) == set()


def test_supplies_at_one_node_add_up() -> None:
    graph = FlowGraph()
    graph.supply("a", 0.004)
    graph.supply("a", 0.004)
    graph.drain("a", 0.007)
    assert graph.surplus() == {"a"}


def test_nothing_at_all_leaves_nothing() -> None:
    assert FlowGraph().surplus() == set()


@pytest.mark.parametrize("seed", range(60))
def test_surplus_is_what_the_library_leaves_on_any_graph(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # a graph, not a secret
    nodes = [str(number) for number in range(random.randint(2, 9))]
    sizes = [0.0, 1.0 * GRAIN_M3, 2.0 * GRAIN_M3, 3.0 * GRAIN_M3, math.inf]
    supplies = {node: random.choice(sizes[:-1]) for node in nodes if random.random() < 0.6}
    drains = {node: random.choice(sizes) for node in nodes if random.random() < 0.5}
    pipes = {(a, b): random.choice(sizes) for a in nodes for b in nodes if a != b and random.random() < 0.4}
    assert surplus(supplies, drains, pipes) == surplus_by_library(supplies, drains, pipes)


def surplus_by_library(
    supplies: dict[str, float], drains: dict[str, float], pipes: dict[tuple[str, str], float]
) -> set[object]:
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(("source", "sink"))
    arcs = {**{("source", node): most for node, most in supplies.items()}, **pipes}
    for (start, end), most in {**arcs, **{(node, "sink"): most for node, most in drains.items()}}.items():
        graph.add_edge(start, end, **({} if math.isinf(most) else {"capacity": round(most / GRAIN_M3)}))
    residual = edmonds_karp(graph, "source", "sink")
    left = nx.DiGraph([(a, b) for a, b, arc in residual.edges(data=True) if arc["flow"] < arc["capacity"]])
    left.add_node("source")
    return set(nx.descendants(left, "source"))
