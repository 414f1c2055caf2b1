"""Findings in order to those that are told together: many of one name that one cure mends."""

from collections.abc import Iterator, Sequence

from plumbnet.rules import Finding

MANY_ALIKE = 2
"""From this many findings of one name and one cure on, the cure is said once."""


def alike(found: Sequence[Finding]) -> Iterator[list[Finding]]:
    """Findings of one name that one cure mends, together where they are many; else each by itself, in their order."""
    groups: dict[tuple[str, str], list[Finding]] = {}
    for one in found:
        groups.setdefault((one.name, one.advice), []).append(one)
    for one in found:
        group = groups[one.name, one.advice]
        if len(group) < MANY_ALIKE:
            yield [one]
        elif one is group[0]:
            yield group
