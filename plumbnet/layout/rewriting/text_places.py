"""The text of a YAML file to its values with the place at which each begins and ends."""

import re
from collections.abc import Callable, Sequence
from typing import TypeAlias

import yaml
from yaml.nodes import MappingNode, Node, SequenceNode

Steps: TypeAlias = Sequence[str | int]
"""Keys and numbers of items, from the top of a file to one of its values."""

_COMPOSE: Callable[..., Node | None] = yaml.compose
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_BREAK = re.compile("\r\n|[\r\n\x85\u2028\u2029]")


class Unwritable(ValueError):
    """A change that the text of a file has no place for; the message is the end of a sentence."""


def node_at(text: str, steps: Steps) -> Node | None:
    """The value at the end of some steps, None where there is none.

    Raises Unwritable where what stands there is a reference to an anchor.
    """
    node = _COMPOSE(text, Loader=_LOADER)
    for step in steps:
        found = [(at, own) for key, at, own in entries_of(node) if key == step]
        if not found:
            return None
        (at, node), *_ = found
        if node.start_mark.index < at:
            raise Unwritable(f"{step} refers to an anchor, so that a change to it would change something else too")
    return node


def entries_of(node: Node | None) -> list[tuple[str | int, int, Node]]:
    """Each key or number with where its value begins at the earliest, and its value."""
    if isinstance(node, MappingNode):
        return [(key.value, key.end_mark.index, value) for key, value in node.value]
    if isinstance(node, SequenceNode):
        return [(number, node.start_mark.index, value) for number, value in enumerate(node.value)]
    return []


def end_of_node(node: Node) -> int:
    """Where the last character of a value has been: of a block, that of the last value in it."""
    if is_closed(node) or not node.value:
        return int(node.end_mark.index)
    last = node.value[-1]
    value: Node = last[1] if isinstance(node, MappingNode) else last
    if value.start_mark.index < node.start_mark.index:
        raise Unwritable("it ends with a reference to an anchor")
    return end_of_node(value)


def is_closed(node: Node) -> bool:
    """Whether a value ends with a sign of its own: a scalar, or what stands in braces or brackets."""
    return not isinstance(node, MappingNode | SequenceNode) or bool(node.flow_style)


def line_start(text: str, index: int) -> int:
    """Where the line begins on which a character stands."""
    return max((found.end() for found in _BREAK.finditer(text, 0, index)), default=0)


def line_end(text: str, index: int) -> int:
    """Where the line ends, before its break, on which a value has ended; a break just passed belongs to its line."""
    if index and _BREAK.fullmatch(text[index - 1]):
        index -= 1 + text[:index].endswith("\r\n")
    found = _BREAK.search(text, index)
    return len(text) if found is None else found.start()


def after_break(text: str, index: int) -> int:
    """Where the next line begins, from the end of one."""
    found = _BREAK.match(text, index)
    return index if found is None else found.end()


def break_of(text: str) -> str:
    """How the file breaks its lines."""
    found = _BREAK.search(text)
    return "\n" if found is None else found[0]
