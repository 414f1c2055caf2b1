"""What is said of parts before to what is said of them after: paired by its name and the parts that it is about."""

from collections.abc import Sequence
from typing import TypeAlias

Subject: TypeAlias = tuple[str, tuple[str, ...]]
"""Name of a requirement, or of its finding, and the parts that it is about."""


def paired_subjects(subjects: Sequence[Subject], others: Sequence[Subject]) -> dict[int, int]:
    """Which of `subjects` stands where in `others`: by name and all parts, what is left by name and leading part.

    Of several alike the first is paired with the first. Pairs by all parts come before those by the leading one.

    >>> paired_subjects([("a", ("heater", "cv")), ("a", ("tank",))], [("a", ("tank",)), ("a", ("heater", "stop"))])
    {1: 0, 0: 1}
    """
    pairs: dict[int, int] = {}
    for key in (whole_subject, leading_subject):
        taken = set(pairs.values())
        waiting: dict[Subject, list[int]] = {}
        for at, one in enumerate(others):
            if at not in taken:
                waiting.setdefault(key(one), []).append(at)
        for at, one in enumerate(subjects):
            same = waiting.get(key(one)) if at not in pairs else None
            if same:
                pairs[at] = same.pop(0)
    return pairs


def whole_subject(subject: Subject) -> Subject:
    """A subject told by all its parts."""
    return subject


def leading_subject(subject: Subject) -> Subject:
    """A subject told by its leading part alone."""
    name, parts = subject
    return name, parts[:1]
