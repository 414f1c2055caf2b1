"""Two reports to the findings that the applicant's own word keeps from counting in the later one.

The one place of a comparison that knows who accepts what.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.rules import Accepted, Acceptor, Claimed, Finding, Severity
from plumbnet.study.compare.finding_match import matched


@dataclass(frozen=True, slots=True)
class SelfAccepted:
    """A finding that the later file accepts by itself, whether or not that counts; new there, or standing before."""

    accepted: Accepted | Claimed
    is_new: bool

    @property
    def is_worse(self) -> bool:
        """Whether it is an error that was not there before."""
        return self.is_new and self.accepted.finding.severity is Severity.ERROR


def self_accepted(before: Report, after: Report) -> tuple[SelfAccepted, ...]:
    """What the applicant accepts in the later report and did not before: new ones first, then the most severe.

    One that was a warning or a note before and is an error now is new. One that was accepted before is not told.
    """
    found = [*_new(before, after), *_standing_before(before, after)]
    return tuple(sorted(found, key=lambda one: (not one.is_new, one.accepted.finding.severity.rank)))


def by_applicant(report: Report) -> tuple[Accepted | Claimed, ...]:
    """What the applicant accepts, whether that counts or not."""
    said: list[Accepted | Claimed] = [*report.accepted, *report.claimed]
    return tuple(one for one in said if one.by is Acceptor.APPLICANT)


def word_on(report: Report, finding: Finding) -> Accepted | Claimed | None:
    """The applicant's word on a finding, whether it counts or not; None where there is none."""
    return next((one for one in by_applicant(report) if one.finding == finding), None)


def inspectors_word_on(report: Report, finding: Finding) -> Accepted | None:
    """The inspector's own word, by which a finding counts no more; None where there is none."""
    return next((one for one in report.accepted if one.finding == finding and one.by is Acceptor.INSPECTOR), None)


def _new(before: Report, after: Report) -> Iterator[SelfAccepted]:
    known = [*before.findings, *(one.finding for one in before.accepted)]
    found = matched(known, [one.finding for one in by_applicant(after)])
    fresh = [*found.new, *(one.after for one in found.altered if one.is_worse)]
    return (SelfAccepted(one, is_new=True) for one in by_applicant(after) if one.finding in fresh)


def _standing_before(before: Report, after: Report) -> Iterator[SelfAccepted]:
    """What stood before and was not accepted; an error that was less then is new."""
    unsaid = [one for one in before.findings if word_on(before, one) is None]
    stood = matched(unsaid, [one.finding for one in by_applicant(after)])
    fresh = [*stood.new, *(one.after for one in stood.altered if one.is_worse)]
    return (SelfAccepted(one, is_new=False) for one in by_applicant(after) if one.finding not in fresh)
