"""Pairs of numbers that belong together to the groups that they make."""

from collections.abc import Iterable


def groups(count: int, pairs: Iterable[tuple[int, int]]) -> tuple[list[int], int]:
    """The group of each number below `count`, where pairs join them, and how many groups there are. Near-linear.

    Groups are numbered in the order of their lowest members.

    >>> groups(5, [(0, 3), (4, 3)])
    ([0, 1, 2, 0, 0], 3)
    """
    lower = list(range(count))  # one of the same group that is no higher; the lowest has itself
    for one, other in pairs:
        first, second = _lowest(lower, one), _lowest(lower, other)
        if first < second:
            lower[second] = first
        else:
            lower[first] = second
    group_of: list[int] = []
    found = 0
    for number, below in enumerate(lower):
        if below == number:
            group_of.append(found)
            found += 1
        else:
            group_of.append(group_of[below])
    return group_of, found


def _lowest(lower: list[int], number: int) -> int:
    """The lowest of a group as far as it is joined; what lies on the way to it is shortened by half."""
    while lower[number] != number:
        lower[number] = lower[lower[number]]
        number = lower[number]
    return number
