"""The findings of two reports to those that are new, those that are gone, and those that stand in other words."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from plumbnet.rules import Finding, Severity


@dataclass(frozen=True, slots=True)
class FindingChange:
    """A finding that stands in both reports with other words, numbers, parts or severity."""

    before: Finding
    after: Finding

    @property
    def is_worse(self) -> bool:
        """Whether it has become an error."""
        return self.after.severity is Severity.ERROR and self.before.severity is not Severity.ERROR


@dataclass(frozen=True, slots=True)
class FindingMatch:
    """Findings that only the later report has, that only the earlier one has, and that both have in other words."""

    new: tuple[Finding, ...]
    gone: tuple[Finding, ...]
    altered: tuple[FindingChange, ...]


_Matching = Callable[[Finding], tuple[str, ...]]


def matched(before: Sequence[Finding], after: Sequence[Finding]) -> FindingMatch:
    """The findings of both, matched by name and all their parts, what is left by name and leading part.

    Of several alike the first is matched with the first.
    """
    pairs: list[FindingChange] = []
    gone, new = list(before), list(after)
    for key in (_by_all_parts, _by_leading_part):
        gone, new = _paired(gone, new, key, pairs)
    return FindingMatch(
        tuple(new), tuple(gone), tuple(pair for pair in pairs if _said(pair.before) != _said(pair.after))
    )


def _paired(
    before: Sequence[Finding], after: Sequence[Finding], key: _Matching, pairs: list[FindingChange]
) -> tuple[list[Finding], list[Finding]]:
    """Adds what has the same key in both to `pairs`, in order; returns what is left of each."""
    waiting: dict[tuple[str, ...], list[Finding]] = {}
    for one in before:
        waiting.setdefault(key(one), []).append(one)
    left = []
    for one in after:
        same = waiting.get(key(one))
        if same:
            pairs.append(FindingChange(same.pop(0), one))
        else:
            left.append(one)
    kept = {id(one) for same in waiting.values() for one in same}
    return [one for one in before if id(one) in kept], left


def _by_all_parts(finding: Finding) -> tuple[str, ...]:
    return (finding.name, *finding.parts)


def _by_leading_part(finding: Finding) -> tuple[str, ...]:
    return (finding.name, *finding.parts[:1])


def _said(finding: Finding) -> tuple[object, ...]:
    """What a reader sees of a finding, less the line, which moves with every edit above it."""
    return finding.severity, finding.parts, finding.text, finding.advice, finding.clause
