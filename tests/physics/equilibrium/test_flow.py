import math
from random import Random

import networkx as nx
import pytest
from networkx.algorithms.flow import edmonds_karp

from plumbnet.physics.equilibrium.flow import FlowGraph, nodes_of

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


# What is one node of a flow


def node_of(joins: str, gives: str = "") -> dict[str, object]:
    """Things that join, as in "a>b b>c", to their nodes; those in `gives` have a volume to give."""
    pairs = [(join[0], join[-1]) for join in joins.split()]
    return nodes_of(sorted({thing for pair in pairs for thing in pair}), pairs, lambda thing: thing in gives)


def test_what_is_come_to_from_one_place_is_one_with_it_however_far() -> None:
    assert node_of("a>b b>c c>d", "a") == dict.fromkeys("abcd", "a")


def test_what_gives_or_is_come_to_from_two_places_is_its_own() -> None:
    assert node_of("a>b b>c", "ab") == {"a": "a", "b": "b", "c": "b"}
    assert node_of("a>c b>c c>d", "ab") == {"a": "a", "b": "b", "c": "c", "d": "c"}


def test_ways_that_come_from_one_place_and_meet_again_are_one_with_it() -> None:
    assert node_of("a>b a>c b>d c>d", "a") == dict.fromkeys("abcd", "a")


def test_dead_ends_behind_the_same_places_are_one() -> None:
    found = node_of("a>c b>c a>d b>d", "ab")
    assert found["c"] == found["d"] not in ("a", "b", "c", "d")


def test_what_stands_in_a_circle_or_behind_one_is_its_own() -> None:
    assert node_of("a>b b>c c>b c>d", "a") == {thing: thing for thing in "abcd"}


@pytest.mark.parametrize("seed", range(60))
def test_flow_of_nodes_leaves_what_the_flow_of_all_leaves(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # a graph, not a secret
    things = [str(number) for number in range(random.randint(2, 9))]
    joins = [(a, b) for a in things for b in things if a != b and random.random() < 0.25]
    given = {thing: random.randint(1, 4) * GRAIN_M3 for thing in things if random.random() < 0.4}
    room = {thing: random.randint(0, 4) * GRAIN_M3 for thing in things}
    node_of = nodes_of(things, joins, given.__contains__)
    graph = FlowGraph()
    for thing in things:
        graph.supply(node_of[thing], given.get(thing, 0.0))
        graph.drain(node_of[thing], room[thing])
    for near, far in joins:
        if node_of[near] != node_of[far]:
            graph.join(node_of[near], node_of[far])
    left = graph.surplus()
    assert {thing for thing in things if node_of[thing] in left} == surplus(given, room, dict.fromkeys(joins, math.inf))
