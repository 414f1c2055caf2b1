"""Directed graphs to trees of dominators: which nodes every way from a root leads through."""

from collections.abc import Iterable, Iterator, Mapping
from typing import TypeVar

At = TypeVar("At")
Tree = dict[At, At | None]
"""The nearest dominator of each node that can be reached; None for the root."""


def dominators(onward: Mapping[At, Iterable[At]], root: At) -> Tree[At]:
    """The tree of dominators of what can be reached from `root`; `onward` has the nodes that follow each.

    Cost grows as m log n.  Source: Lengauer and Tarjan, A fast algorithm for finding dominators in a
    flowgraph, ACM TOPLAS 1 (1979), the simple version; no recursion.

    >>> dominators({"street": ["a", "b"], "a": ["tap"], "b": ["tap"]}, "street")["tap"]
    'street'
    """
    nodes, parent, before = _searched(onward, root)
    count = len(nodes)
    semi, over = list(range(count)), [0] * count
    forest = _Forest(count, semi)
    waiting: list[list[int]] = [[] for _ in nodes]
    for node in range(count - 1, 0, -1):
        semi[node] = min(semi[forest.lowest(each)] for each in before[node])
        waiting[semi[node]].append(node)
        forest.ancestor[node] = parent[node]
        for each in waiting[parent[node]]:
            lowest = forest.lowest(each)
            over[each] = lowest if semi[lowest] < semi[each] else parent[node]
        waiting[parent[node]].clear()
    for node in range(1, count):
        if over[node] != semi[node]:
            over[node] = over[over[node]]
    return {root: None} | {nodes[node]: nodes[over[node]] for node in range(1, count)}


def _searched(onward: Mapping[At, Iterable[At]], root: At) -> tuple[list[At], list[int], list[list[int]]]:
    """Nodes numbered as a search in depth meets them, the parent of each, and the nodes each follows."""
    number = {root: 0}
    nodes, parent = [root], [0]
    before: list[list[int]] = [[]]
    stack = [(0, iter(onward.get(root, ())))]
    while stack:
        at, rest = stack[-1]
        node = next(rest, None)
        if node is None:
            stack.pop()
            continue
        if node not in number:
            number[node] = len(nodes)
            nodes.append(node)
            parent.append(at)
            before.append([])
            stack.append((number[node], iter(onward.get(node, ()))))
        before[number[node]].append(at)
    return nodes, parent, before


class _Forest:
    """Trees that grow upwards; `lowest` is the node of least semidominator between a node and its root."""

    def __init__(self, count: int, semi: list[int]) -> None:
        self.ancestor: list[int] = [-1] * count
        self._semi = semi
        self._label = list(range(count))

    def lowest(self, node: int) -> int:
        if self.ancestor[node] < 0:
            return node
        path = []
        while self.ancestor[self.ancestor[node]] >= 0:
            path.append(node)
            node = self.ancestor[node]
        for below in reversed(path):
            above = self.ancestor[below]
            if self._semi[self._label[above]] < self._semi[self._label[below]]:
                self._label[below] = self._label[above]
            self.ancestor[below] = self.ancestor[above]
        return self._label[path[0] if path else node]


def under_one(before: Tree[At], after: Tree[At], pairs: Iterable[tuple[At, At]]) -> set[tuple[At, At]]:
    """Those pairs of which one and the same node stands over the first in `before` and over the second in `after`.

    A node stands over itself. Cost grows as (n + pairs) log n.
    """
    seconds: dict[At, list[At]] = {}
    for first, second in pairs:
        seconds.setdefault(first, []).append(second)
    entered: dict[At, int] = {}
    left: dict[At, int] = {}
    for node, is_entering in _toured(after):
        (entered if is_entering else left)[node] = len(entered)
    covered = _Sums(len(after) + 1)
    found: set[tuple[At, At]] = set()
    for node, is_entering in _toured(before):
        if node in entered:
            step = 1 if is_entering else -1
            covered.add(entered[node], step)
            covered.add(left[node], -step)
        if is_entering:
            found.update((node, second) for second in seconds.get(node, ()) if covered.up_to(entered[second]) > 0)
    return found


def spans(tree: Tree[At]) -> dict[At, tuple[int, int]]:
    """A number for each node and one past the last of those below it: a node stands over those within its span.

    >>> spans({"street": None, "a": "street", "tap": "a"})["a"]
    (1, 3)
    """
    entered: dict[At, int] = {}
    found: dict[At, tuple[int, int]] = {}
    for node, is_entering in _toured(tree):
        if is_entering:
            entered[node] = len(entered)
        else:
            found[node] = (entered[node], len(entered))
    return found


def _toured(tree: Tree[At]) -> Iterator[tuple[At, bool]]:
    """Each node on entering it and, once all below it are done, on leaving it."""
    below: dict[At | None, list[At]] = {}
    for node, over in tree.items():
        below.setdefault(over, []).append(node)
    stack = [(node, True) for node in below[None]]
    while stack:
        node, is_entering = stack.pop()
        yield node, is_entering
        if is_entering:
            stack.append((node, False))
            stack += [(each, True) for each in below.get(node, ())]


class _Sums:
    """Sums over the beginning of a row of numbers that change (a binary indexed tree)."""

    def __init__(self, count: int) -> None:
        self._sums = [0] * (count + 1)

    def add(self, index: int, value: int) -> None:
        index += 1
        while index < len(self._sums):
            self._sums[index] += value
            index += index & -index

    def up_to(self, index: int) -> int:
        index += 1
        total = 0
        while index > 0:
            total += self._sums[index]
            index -= index & -index
        return total
