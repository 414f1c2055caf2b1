"""Blocks of links: every two of them lie on one way round."""

from random import Random

import networkx as nx
import pytest

from plumbnet.network.graphs.biconnected_blocks import blocks

DEEP = 20_000


def test_link_past_which_no_way_round_leads_is_no_block() -> None:
    assert list(blocks([(0, 1), (1, 2), (1, 3)])) == []
    assert list(blocks([])) == []


def test_two_links_between_the_same_nodes_are_a_block() -> None:
    assert list(blocks([(7, 3), (5, 7), (3, 7)])) == [[0, 2]]


def test_rounds_that_share_one_node_are_blocks_of_their_own() -> None:
    assert sorted(blocks([(0, 1), (1, 2), (2, 0), (2, 3), (3, 4), (4, 2)])) == [[0, 1, 2], [3, 4, 5]]


def test_round_of_many_links_is_one_block() -> None:
    ring = [(node, (node + 1) % DEEP) for node in range(DEEP)]
    assert list(blocks(ring)) == [list(range(DEEP))]


@pytest.mark.parametrize("seed", range(40))
def test_blocks_are_the_biconnected_components(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # links, not a secret
    count = random.randrange(2, 25)
    pairs = sorted({tuple(sorted(random.sample(range(count), 2))) for _ in range(random.randrange(1, 40))})
    links = [(one, other) if random.random() < 0.5 else (other, one) for one, other in pairs]
    graph: nx.Graph[int] = nx.Graph(links)
    found = ({tuple(sorted(edge)) for edge in edges} for edges in nx.biconnected_component_edges(graph))
    wanted = sorted([link for link, pair in enumerate(pairs) if pair in edges] for edges in found if len(edges) > 1)
    assert sorted(blocks(links)) == wanted
