"""JSON written piece by piece, byte for byte as `json.dumps` with an indent of one writes the whole."""

import json
from collections.abc import Iterable, Iterator, Mapping


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


def array(fragments: Iterable[str], depth: int) -> Iterator[str]:
    """A list of fragments that stand so deep, each written as it comes."""
    between = "[\n"
    for one in fragments:
        yield f"{between}{' ' * depth}{one}"
        between = ",\n"
    yield "[]" if between == "[\n" else f"\n{' ' * (depth - 1)}]"


def closed(depth: int = 0) -> str:
    """The end of an open object that stands so deep."""
    return f"\n{' ' * depth}}}"
