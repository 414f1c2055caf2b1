"""Names of many to one expression for all: ranges of numbers where there are such, else the first and the last."""

import re
from collections.abc import Sequence
from itertools import product
from math import prod

_NAMED_SINGLY = 3
LEFT_OUT = " ... "
"""Between the first and the last of names that are not all told."""


def range_of(names: Sequence[str]) -> str:
    """The names of what is alike, in their natural order.

    >>> range_of([f"rooms/{number}" for number in range(101, 121)])
    'rooms/101-120'
    >>> range_of([f"{wing}/rooms/{number}" for wing in ("a", "b") for number in (1, 2, 3)])
    'a-b/rooms/1-3'
    >>> range_of(["apt1a", "apt2a", "apt10a"])
    'apt1a ... apt10a'
    """
    ordered = sorted(dict.fromkeys(names), key=natural)
    pieces = [name.split("/") for name in ordered]
    if "/" in ordered[0] and len({len(each) for each in pieces}) == 1:
        sorts = [sorted(set(column), key=natural) for column in zip(*pieces, strict=True)]
        if prod(map(len, sorts)) == len(ordered) and all("/".join(each) in set(ordered) for each in product(*sorts)):
            return "/".join(map(_of_one_place, sorts))
    return ordered[0] if len(ordered) == 1 else f"{ordered[0]}{LEFT_OUT}{ordered[-1]}"


def natural(name: str) -> list[tuple[bool, int, str]]:
    """Sorts names as people do: numbers in them by what they count."""
    return [
        (not piece.isdecimal(), int(piece) if piece.isdecimal() else 0, piece) for piece in re.split(r"(\d+)", name)
    ]


def _of_one_place(names: Sequence[str]) -> str:
    """What stands between two slashes: a range where names follow on each other, else all of a few."""
    if len(names) == 1:
        return names[0]
    numbers = [int(name) for name in names if name.isdecimal()]
    letters = [ord(name) for name in names if len(name) == 1 and name.isalpha()]
    for values in (numbers, letters):
        if len(values) == len(names) and values == list(range(values[0], values[0] + len(values))):
            return f"{names[0]}-{names[-1]}"
    return ", ".join(names) if len(names) <= _NAMED_SINGLY else f"{names[0]}{LEFT_OUT}{names[-1]}"


def called(members: Sequence[str], uses: Sequence[str]) -> str:
    """What a branch is called: the instance that all its parts are of, else the last fixture, else the last part."""
    pieces = [name.split("/")[:-1] for name in members]
    shared = []
    for column in zip(*pieces, strict=False):
        if len(set(column)) > 1:
            break
        shared.append(column[0])
    if shared:
        return "/".join(shared)
    return uses[-1] if uses else members[-1]
