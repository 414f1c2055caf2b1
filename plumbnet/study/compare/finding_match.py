"""The findings of two reports to those that are new, those that are gone, and those that stand in other words."""

from collections.abc import Sequence
from dataclasses import dataclass

from plumbnet.rules import Finding, Severity
from plumbnet.study.compare.subject_match import Subject, paired_subjects


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


def matched(before: Sequence[Finding], after: Sequence[Finding]) -> FindingMatch:
    """The findings of both, matched by name and all their parts, what is left by name and leading part.

    Of several alike the first is matched with the first.
    """
    pairs = paired_subjects([_subject(one) for one in after], [_subject(one) for one in before])
    kept = set(pairs.values())
    changes = [FindingChange(before[was], after[now]) for now, was in pairs.items()]
    return FindingMatch(
        tuple(one for at, one in enumerate(after) if at not in pairs),
        tuple(one for at, one in enumerate(before) if at not in kept),
        tuple(change for change in changes if _said(change.before) != _said(change.after)),
    )


def _subject(finding: Finding) -> Subject:
    return finding.name, finding.parts


def _said(finding: Finding) -> tuple[object, ...]:
    """What a reader sees of a finding, less the line, which moves with every edit above it."""
    return finding.severity, finding.parts, finding.text, finding.advice, finding.clause
