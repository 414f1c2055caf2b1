"""Lists and mappings of which the end has not come yet, while the events of a parser are read one by one."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from plumbnet.layout.yaml.node import Plain, YamlNode

MERGE: Final = "<<"
"""The key under which a mapping takes over the entries of others."""


@dataclass(slots=True)
class Anchored:
    """What an anchor names, and its size in nodes; below 1 while it is still being read."""

    node: YamlNode
    size: int


class OpenList:
    """A list whose end has not come yet."""

    __slots__ = ("anchored", "items", "keys", "node", "values", "wants_key")

    def __init__(self, line: int, column: int) -> None:
        self.items: list[YamlNode] = []
        self.values: list[Plain] = []
        self.node = YamlNode(self.values, line, column, self.items)
        self.keys: dict[str, tuple[int, int]] = {}
        self.wants_key = False
        self.anchored: Anchored | None = None

    def add(self, node: YamlNode) -> None:
        """Put a node at the end."""
        self.items.append(node)
        self.values.append(node.value)

    def name(self, key: str, line: int, column: int) -> None:
        """Never called: a list wants no keys."""


class OpenMapping:
    """A mapping whose end has not come yet; `merging` has its merge key, where there is one."""

    __slots__ = ("anchored", "items", "key", "keys", "merging", "node", "values", "wants_key")

    def __init__(self, line: int, column: int) -> None:
        self.items: dict[str, YamlNode] = {}
        self.values: dict[str, Plain] = {}
        self.keys: dict[str, tuple[int, int]] = {}
        self.node = YamlNode(self.values, line, column, self.items, self.keys)
        self.key = ""
        self.merging: set[str] = set()
        self.wants_key = True
        self.anchored: Anchored | None = None

    def add(self, node: YamlNode) -> None:
        """Put a node under the key that was named last."""
        self.items[self.key] = node
        self.values[self.key] = node.value
        self.wants_key = True

    def name(self, key: str, line: int, column: int) -> None:
        """Name the key of the next node, and where it stands."""
        self.key = key
        self.keys.setdefault(key, (line, column))
        self.wants_key = False

    def drop(self, key: str) -> None:
        """Take an entry out again."""
        del self.items[key], self.values[key], self.keys[key]

    def merge(self, others: Sequence[YamlNode]) -> None:
        """Put the entries of other mappings where the merge key stands; its own, and those of earlier ones, count."""
        own = [(key, self.items.pop(key), self.keys.pop(key)) for key in list(self.items)]
        self.values.clear()
        names = {key for key, _, _ in own}
        for key, node, place in own:
            for name, one, at in _entries(others) if key == MERGE else [(key, node, place)]:
                if name == key or name not in names:
                    self.items.setdefault(name, one)
                    self.values.setdefault(name, one.value)
                    self.keys.setdefault(name, at)


def _entries(mappings: Sequence[YamlNode]) -> Iterator[tuple[str, YamlNode, tuple[int, int]]]:
    """Each entry of some mappings: its key, its value, and where the key stands."""
    for mapping in mappings:
        keys = mapping.keys or {}
        for name, node in mapping.items.items() if isinstance(mapping.items, dict) else ():
            yield name, node, keys.get(name, (node.line, node.column))
