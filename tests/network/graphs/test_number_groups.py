"""Groups that pairs of numbers make, numbered by their lowest members."""

from random import Random

import networkx as nx
import pytest

from plumbnet.network.graphs.number_groups import groups


def test_numbers_that_no_pair_joins_are_groups_of_their_own() -> None:
    assert groups(3, []) == ([0, 1, 2], 3)
    assert groups(0, []) == ([], 0)


def test_groups_are_numbered_by_their_lowest_members_however_the_pairs_lie() -> None:
    assert groups(6, [(5, 4), (4, 1), (3, 0), (0, 3), (2, 2)]) == ([0, 1, 2, 0, 1, 1], 3)
    assert groups(4, [(0, 1), (2, 3), (3, 1)]) == ([0, 0, 0, 0], 1)


@pytest.mark.parametrize("seed", range(20))
def test_groups_are_the_connected_components(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # pairs, not a secret
    count = random.randrange(1, 60)
    pairs = [(random.randrange(count), random.randrange(count)) for _ in range(random.randrange(80))]
    graph: nx.Graph[int] = nx.Graph(pairs)
    graph.add_nodes_from(range(count))
    wanted = sorted(sorted(each) for each in nx.connected_components(graph))
    group_of, found = groups(count, pairs)
    assert [[number for number in range(count) if group_of[number] == group] for group in range(found)] == wanted
