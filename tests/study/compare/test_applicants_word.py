"""What counts no more because the later file accepts it."""

from dataclasses import replace

from curing import house

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.finding import Accepted, Claimed, Finding, Severity
from plumbnet.study.compare.applicants_word import by_applicant, inspectors_word_on, self_accepted, word_on

REPORT = plumbnet.check(house())
(TRAPPED,) = REPORT.findings
NOTED = replace(TRAPPED, severity=Severity.NOTE)
OTHER = replace(TRAPPED, name="tank-charge-differs", severity=Severity.WARNING)


def report(*standing: Finding, accepted: tuple[Finding, ...] = ()) -> Report:
    return replace(REPORT, findings=standing, accepted=tuple(Accepted(one, "so", 9) for one in accepted))


def told(before: Report, after: Report) -> list[tuple[str, bool, bool]]:
    return [(one.accepted.finding.name, one.is_new, one.is_worse) for one in self_accepted(before, after)]


def test_new_error_that_the_file_accepts_is_worse() -> None:
    assert told(report(), report(accepted=(TRAPPED,))) == [("trapped-expansion", True, True)]


def test_error_that_stood_before_is_told_and_is_no_worse() -> None:
    assert told(report(TRAPPED), report(accepted=(TRAPPED,))) == [("trapped-expansion", False, False)]


def test_error_that_was_accepted_before_is_not_told() -> None:
    assert told(report(accepted=(TRAPPED,)), report(accepted=(TRAPPED,))) == []


def test_note_that_is_an_error_now_is_a_new_error() -> None:
    assert told(report(NOTED), report(accepted=(TRAPPED,))) == [("trapped-expansion", True, True)]
    assert told(report(accepted=(NOTED,)), report(accepted=(TRAPPED,))) == [("trapped-expansion", True, True)]


def test_error_that_is_a_note_now_stood_before() -> None:
    assert told(report(TRAPPED), report(accepted=(NOTED,))) == [("trapped-expansion", False, False)]


def test_new_warning_is_told_and_is_no_worse() -> None:
    assert told(report(), report(accepted=(OTHER,))) == [("tank-charge-differs", True, False)]


def test_new_ones_come_first_then_the_most_severe() -> None:
    found = told(report(NOTED), report(accepted=(OTHER, replace(NOTED, text="other"), replace(TRAPPED, name="a"))))
    assert [name for name, _, _ in found] == ["a", "tank-charge-differs", "trapped-expansion"]


def test_word_on_a_finding_is_that_of_who_accepts_it() -> None:
    after = report(OTHER, accepted=(TRAPPED,))
    assert [one.finding for one in by_applicant(after)] == [TRAPPED]
    assert word_on(after, TRAPPED) == Accepted(TRAPPED, "so", 9)
    assert word_on(after, OTHER) is None


def test_word_of_the_inspector_is_not_that_of_the_applicant() -> None:
    own = Accepted(TRAPPED, "seen", 3, Acceptor.INSPECTOR, "own.yaml")
    after = replace(report(OTHER), accepted=(own,))
    assert by_applicant(after) == ()
    assert told(report(), after) == []
    assert word_on(after, TRAPPED) is None
    assert inspectors_word_on(after, TRAPPED) == own
    assert inspectors_word_on(after, OTHER) is None


def test_word_that_does_not_count_is_still_the_applicants() -> None:
    claimed = Claimed(TRAPPED, "so", 9, "acceptances in the file do not count in this review")
    after = replace(report(TRAPPED), claimed=(claimed,))
    assert word_on(after, TRAPPED) == claimed
    assert told(report(), after) == [("trapped-expansion", True, True)]
    assert told(report(TRAPPED), after) == [("trapped-expansion", False, False)]
    assert told(after, after) == []
