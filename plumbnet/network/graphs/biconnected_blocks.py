"""Links between nodes to the blocks in which every two links lie on one way round."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from plumbnet.network.graphs.number_groups import groups

_At = Mapping[int, Sequence[tuple[int, int]]]
"""The links of each node by their numbers, with the nodes at their other ends."""


def blocks(links: Sequence[tuple[int, int]]) -> Iterator[list[int]]:
    """The numbers of the links of each biconnected block; a link by itself, past which no way round leads, is none.

    Two links between the same two nodes are a block. Near-linear.  Source: Hopcroft and Tarjan, Efficient algorithms
    for graph manipulation, CACM 16 (1973) (from memory): a node hangs on what its branch does not lead past.

    >>> sorted(blocks([(1, 2), (2, 3), (3, 1), (3, 4), (4, 5), (5, 4)]))
    [[0, 1, 2], [4, 5]]
    """
    number_of, came = _searched(_ends(links))
    ends = [(number_of[one], number_of[other]) for one, other in links]
    past = _highest_past(ends, came)
    joined = ((node, over) for node, (over, _) in enumerate(came) if past[node] < over)
    group_of, count = groups(len(came), joined)
    found: list[list[int]] = [[] for _ in range(count)]
    for link, nodes in enumerate(ends):
        found[group_of[max(nodes)]].append(link)
    yield from (block for block in found if len(block) > 1)


def _ends(links: Sequence[tuple[int, int]]) -> _At:
    at: dict[int, list[tuple[int, int]]] = defaultdict(list)
    for link, (one, other) in enumerate(links):
        at[one].append((link, other))
        at[other].append((link, one))
    return at


def _searched(at: _At) -> tuple[dict[int, int], list[tuple[int, int]]]:
    """Nodes numbered as a search in depth meets them; for each from which it was come to, and by which link."""
    number_of: dict[int, int] = {}
    came: list[tuple[int, int]] = []
    stack = [(-1, -1, root) for root in at]
    while stack:
        over, link, node = stack.pop()
        if node not in number_of:
            number = number_of[node] = len(came)
            came.append((over, link))
            stack += [(number, each, beyond) for each, beyond in at[node] if beyond not in number_of]
    return number_of, came


def _highest_past(ends: Sequence[tuple[int, int]], came: Sequence[tuple[int, int]]) -> list[int]:
    """For each node the first met of those to which links lead from its branch, but for that by which it was met."""
    past = list(range(len(came)))
    for link, (one, other) in enumerate(ends):
        low, high = (one, other) if one < other else (other, one)
        if came[high][1] != link and low < past[high]:
            past[high] = low
    for node in range(len(came) - 1, -1, -1):
        over = came[node][0]
        if over >= 0 and past[node] < past[over]:
            past[over] = past[node]
    return past
