"""One value of a YAML text changed, added or taken out, all other characters left as they are."""

from collections.abc import Mapping

from yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from plumbnet.layout.rewriting.inline_value import inline_yaml
from plumbnet.layout.rewriting.text_places import (
    Steps,
    Unwritable,
    after_break,
    break_of,
    end_of_node,
    is_closed,
    line_end,
    line_start,
    node_at,
)


def with_value(text: str, steps: Steps, value: object) -> str:
    """The text with another value at the end of some steps, or with a new entry there. Raises Unwritable.

    >>> with_value("stop: {kind: valve}  # by the door", ("stop", "state"), "shut")
    'stop: {kind: valve, state: shut}  # by the door'
    """
    node = node_at(text, steps)
    if node is None:
        return _with_entry(text, steps, value)
    return _replaced(text, node.start_mark.index, end_of_node(node), _like(node, text, value))


def with_fields(text: str, steps: Steps, old: Mapping[str, object], new: Mapping[str, object]) -> str:
    """The text with fields of a mapping as `new` has them where it differs from `old`, which it has now.

    A kind that stands alone becomes a mapping where it gets fields. Raises Unwritable.
    """
    if isinstance(node_at(text, steps), ScalarNode):
        return with_value(text, steps, bare(new))
    for field in [field for field in old if field not in new]:
        text = without_value(text, (*steps, field))
    for field, value in new.items():
        before = old.get(field)
        if isinstance(before, dict) and isinstance(value, dict) and value:
            text = with_fields(text, (*steps, field), before, value)
        elif field not in old or before != value or type(before) is not type(value):
            text = with_value(text, (*steps, field), value)
    return text


def bare(fields: Mapping[str, object]) -> object:
    """The fields of a part, as a bare word where its kind is all there is to say."""
    return fields["kind"] if fields.keys() == {"kind"} else {"kind": fields["kind"], **fields}


def without_value(text: str, steps: Steps) -> str:
    r"""The text without an entry of a mapping or an item of a list. Raises Unwritable.

    >>> without_value("a: 1\nb: 2  # gone with its line\nc: 3", ("b",))
    'a: 1\nc: 3'
    """
    owner = _owner(text, steps)
    spans = _spans(owner)
    at = _number(owner, steps[-1])
    if len(spans) == 1:
        raise Unwritable(f"nothing would be left beside {steps[-1]}")
    start, end = spans[at]
    if is_closed(owner):
        return _replaced(text, *((start, spans[1][0]) if at == 0 else (spans[at - 1][1], end)), "")
    first = line_start(text, start)
    if text[first:start].strip(" -"):
        raise Unwritable(f"{steps[-1]} does not begin its line")
    if isinstance(owner, MappingNode) and text[first:start].strip():
        return _replaced(text, start, spans[at + 1][0] if at + 1 < len(spans) else end, "")
    return _replaced(text, first, after_break(text, line_end(text, end)), "")


def with_item(text: str, steps: Steps, after: int, value: object) -> str:
    """The text with an item more in a list, behind the one of number `after`. Raises Unwritable."""
    owner = node_at(text, steps)
    if not isinstance(owner, SequenceNode) or not owner.value:
        raise Unwritable(f"{steps[-1]} is no list")
    return _behind(text, owner, end_of_node(owner.value[after]), inline_yaml(value), "- ")


def _with_entry(text: str, steps: Steps, value: object) -> str:
    owner = _owner(text, steps)
    if not isinstance(owner, MappingNode):
        raise Unwritable(f"there is no mapping to write {steps[-1]} into")
    entry = inline_yaml({steps[-1]: value})[1:-1]
    if not owner.value:
        return _replaced(text, owner.start_mark.index + 1, owner.start_mark.index + 1, entry)
    return _behind(text, owner, end_of_node(owner), entry, "") if not is_closed(owner) else _in_flow(text, owner, entry)


def _in_flow(text: str, owner: MappingNode, entry: str) -> str:
    end = _spans(owner)[-1][1]
    return _replaced(text, end, end, f", {entry}")


def _behind(text: str, owner: Node, end: int, words: str, lead: str) -> str:
    """Words behind an entry: on a line of their own in a block, behind a comma in one of braces or brackets."""
    if is_closed(owner):
        return _replaced(text, end, end, f", {words}")
    at = line_end(text, end)
    start = owner.start_mark.index
    margin = " " * (start - line_start(text, start))
    return _replaced(text, at, at, f"{break_of(text)}{margin}{lead}{words}")


def _owner(text: str, steps: Steps) -> Node:
    owner = node_at(text, steps[:-1])
    if owner is None:
        raise Unwritable(f"{' '.join(map(str, steps[:-1]))} does not stand in the file as it is changed")
    return owner


def _number(owner: Node, step: str | int) -> int:
    if isinstance(step, int):
        return step
    return [key.value for key, _ in owner.value].index(step)


def _spans(owner: Node) -> list[tuple[int, int]]:
    """Where each entry or item begins and ends."""
    if isinstance(owner, MappingNode):
        return [(key.start_mark.index, _end_behind(key, value)) for key, value in owner.value]
    return [(item.start_mark.index, end_of_node(item)) for item in owner.value]


def _end_behind(key: Node, value: Node) -> int:
    if value.start_mark.index < key.end_mark.index:
        raise Unwritable(f"{key.value} refers to an anchor")
    return end_of_node(value)


def _like(node: Node, text: str, value: object) -> str:
    """The value in YAML, between the quotes of what stands there now."""
    is_plain = isinstance(value, str) and not set(value) & set("\"'\\") and value.isprintable()
    if isinstance(node, ScalarNode) and node.style in {"'", '"'} and is_plain:
        return f"{node.style}{value}{node.style}"
    words = inline_yaml(value)
    return f" {words}" if node.start_mark.index and text[node.start_mark.index - 1] == ":" else words


def _replaced(text: str, start: int, end: int, words: str) -> str:
    return f"{text[:start]}{words}{text[end:]}"
