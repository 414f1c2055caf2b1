"""One value of a YAML file together with its place; what it means is decided elsewhere."""

from dataclasses import dataclass
from typing import TypeAlias

Plain: TypeAlias = "str | bool | int | float | dict[str, Plain] | list[Plain] | None"


@dataclass(slots=True)
class YamlNode:
    """One value of the file and where it begins, both counted from 1.

    `value` is plain Python and, in a mapping or list, shares its parts with the children in `items`; `keys` has
    the place of each key of a mapping; `width` is the length of a scalar on its line. Readers change nothing
    in it: an alias shares the content of what it stands for.

    >>> bakery = YamlNode({"units": "us"}, 1, 1, {"units": YamlNode("us", 1, 8)})
    >>> bakery.at("units", "no further").column
    8
    """

    value: Plain
    line: int
    column: int
    items: "dict[str, YamlNode] | list[YamlNode] | None" = None
    keys: dict[str, tuple[int, int]] | None = None
    width: int = 1

    def at(self, *path: str | int) -> "YamlNode":
        """The node at the end of the path, or the last one on it that exists."""
        node = self
        for step in path:
            items = node.items
            if isinstance(items, dict) and isinstance(step, str) and step in items:
                node = items[step]
                continue
            if not isinstance(items, list) or not isinstance(step, int) or not 0 <= step < len(items):
                break
            node = items[step]
        return node
