"""Findings as lines: what stands, what is accepted, and what somebody accepts in vain."""

from dataclasses import replace

from forms import accepting, fine, trapped

from plumbnet.report.prose.word_colours import plain
from plumbnet.report.text.findings_text import clause_in_words, findings_lines
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.finding import Accepted, Claimed

(FOUND,) = trapped().findings


def test_claim_stands_behind_the_clause_of_its_finding() -> None:
    claimed = replace(trapped(), claimed=(Claimed(FOUND, "ok", 9, "it is not"),))
    head, *told = findings_lines(claimed, plain)
    assert head == "Findings:"
    assert told[-1] == '    The applicant accepts this (line 9): "ok". It stands: it is not.'
    assert clause_in_words(FOUND) in " ".join(line.strip() for line in told[:-1])


def test_claims_of_findings_told_together_are_told_each() -> None:
    many = tuple(replace(FOUND, line=line) for line in range(1, 6))
    report = replace(trapped(), findings=many, claimed=tuple(Claimed(one, "ok", 9, "it is not") for one in many))
    told = "\n".join(findings_lines(report, plain))
    assert "The same of 4 more:" in told
    assert told.count("The applicant accepts this (line 9)") == 5


def test_applicants_and_inspectors_acceptances_have_a_section_each() -> None:
    listed = Accepted(FOUND, "seen", 3, Acceptor.INSPECTOR, "own.yaml")
    report = accepting(trapped(), "so be it")
    told = list(findings_lines(replace(report, accepted=(*report.accepted, listed)), plain))
    assert "Accepted in the file, by the applicant, each for the reason given there (1):" in told
    assert "Accepted by the inspector, each for the reason given in the list (1):" in told
    assert told[-1] == "    Reason given: seen"


def test_nothing_found_is_one_line() -> None:
    assert list(findings_lines(fine(), plain)) == ["No findings."]
