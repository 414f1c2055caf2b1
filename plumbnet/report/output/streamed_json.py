"""JSON written piece by piece, byte for byte as `json.dumps` with an indent of one writes the whole."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass


def fragment(value: object, depth: int) -> str:
    """A value as it stands so deep in a document, less the indent of its first line; plain ASCII.

    Raises ValueError for a number that JSON does not have.
    """
    text = json.dumps(value, indent=1, ensure_ascii=True, allow_nan=False)
    return text.replace("\n", "\n" + " " * depth)


def opened(members: Mapping[str, object], depth: int = 0) -> str:
    r"""An object of at least one member, left open behind the last, for more members to follow.

    >>> opened({"schema": 1})
    '{\n "schema": 1'
    """
    return fragment(members, depth).removesuffix("}").rstrip()


def member(name: str, depth: int) -> str:
    """What comes before the value of another member of an open object whose members stand so deep."""
    return f",\n{' ' * depth}{json.dumps(name)}: "


@dataclass(slots=True)
class Array:
    """A list of fragments that stand so deep, written as they come."""

    depth: int
    is_empty: bool = True

    def add(self, fragments: Iterable[str]) -> str:
        """Some more of them."""
        written = ""
        for one in fragments:
            written += f"{'[' if self.is_empty else ','}\n{' ' * self.depth}{one}"
            self.is_empty = False
        return written

    def end(self) -> str:
        """The end of the list."""
        return "[]" if self.is_empty else f"\n{' ' * (self.depth - 1)}]"


def array(fragments: Iterable[str], depth: int) -> str:
    """A whole list of fragments that stand so deep."""
    whole = Array(depth)
    return whole.add(fragments) + whole.end()


def closed_json(depth: int = 0) -> str:
    """The end of an open object that stands so deep."""
    return f"\n{' ' * depth}}}"
