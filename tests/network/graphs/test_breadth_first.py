"""All that steps lead to, nearest first, and steps by where they start."""

from random import Random

import networkx as nx
import pytest

from plumbnet.network.graphs.breadth_first import all_reached, by_start, nearest_first


def test_each_is_met_once_after_all_that_are_nearer_and_in_the_order_of_the_steps() -> None:
    onward = {"street": ["meter"], "meter": ["street", "tap", "boiler"], "boiler": ["tap", "coil"]}
    found = nearest_first(["street"], lambda part: onward.get(part, []))
    assert list(found) == ["street", "meter", "tap", "boiler", "coil"]


def test_starts_come_first_in_their_order_and_once() -> None:
    assert list(nearest_first([3, 1, 3], lambda number: [1, 2, number])) == [3, 1, 2]
    assert not list(nearest_first([], lambda number: [number]))


def test_nothing_is_asked_of_what_lies_beyond_where_the_search_is_broken_off() -> None:
    asked: list[int] = []

    def beside(number: int) -> list[int]:
        asked.append(number)
        return [number + 1]

    assert next(number for number in nearest_first([0], beside) if number == 4) == 4
    assert asked == [0, 1, 2, 3]


@pytest.mark.parametrize("seed", range(20))
def test_it_is_all_that_can_be_reached_in_the_order_of_distance(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # steps, not a secret
    count = random.randrange(1, 40)
    steps = [(random.randrange(count), random.randrange(count)) for _ in range(random.randrange(80))]
    graph: nx.DiGraph[int] = nx.DiGraph(steps)
    graph.add_node(0)
    onward = by_start(steps)
    away = nx.single_source_shortest_path_length(graph, 0)
    found = list(nearest_first([0], lambda node: onward.get(node, ())))
    assert sorted(found) == sorted(away)
    assert [away[node] for node in found] == sorted(away.values())
    assert all_reached([0], onward) == set(away)


def test_steps_stand_by_where_they_start_in_their_order() -> None:
    assert by_start([(1, 2), (3, 1), (1, 1), (1, 2)]) == {1: [2, 1, 2], 3: [1]}
    assert by_start([]) == {}
