"""Findings as lines of a report: what stands, what somebody accepts in vain, what is accepted and by whom."""

import textwrap
from collections.abc import Container, Iterator, Mapping

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.prose import (
    EqualFindings,
    Paint,
    accepted_in_words,
    alike,
    claim_in_words,
    equal_findings,
    findings_in_short,
    idle_in_words,
    long_in_short,
)
from plumbnet.rules import Acceptor, Claimed, Finding

WIDTH = 100
LABEL = 16
"""Width of the label before what is said of a heater."""
_WHERE_ACCEPTED = {
    Acceptor.APPLICANT: "Accepted in the file, by the applicant, each for the reason given there",
    Acceptor.INSPECTOR: "Accepted by the inspector, each for the reason given in the list",
}


def findings_lines(report: Report, paint: Paint) -> Iterator[str]:
    """Findings that stand, then those that are accepted, with the reasons, and acceptances of what was not found."""
    yield from hung("", findings_in_short(stand=bool(report.findings), accepted=report.accepted))
    claims = {one.finding: one for one in report.claimed}
    together = equal_findings(report.findings, report.system, claims)
    of_many = {each.findings[0]: each for each in together if each.instances}
    for group in alike([each.findings[0] for each in together]):
        for one in group:
            if one in of_many:
                yield from _of_instances(of_many[one], paint)
        others = [one for one in group if one not in of_many]
        if others:
            yield from _group(others, claims, paint, report.system.parts)
    for by in Acceptor:
        yield from _accepted(report, by, paint)
    idle = idle_in_words(report.idle)
    if idle:
        yield from ("", *hung("", idle))


def _of_instances(equal: EqualFindings, paint: Paint) -> Iterator[str]:
    """What is found alike in several instances of an assembly, once."""
    one = equal.findings[0]
    yield f"  {_head(one, paint)}"
    for text in (f"{equal.instances}: {equal.within(one.text)}", equal.within(one.advice), clause_in_words(one)):
        yield from hung("    ", text)


def _group(
    group: list[Finding], claims: Mapping[Finding, Claimed], paint: Paint, known: Container[str]
) -> Iterator[str]:
    one, *others = group
    yield f"  {_head(one, paint)}"
    for text in (one.text, one.advice, clause_in_words(one), *_claim(one, claims)):
        yield from hung("    ", long_in_short(text, known))
    if others:
        yield f"    The same of {len(others)} more:"
    for more in others:
        yield from hung(f"      line {more.line}: " if more.line else "      ", long_in_short(more.text, known))
        for text in _claim(more, claims):
            yield from hung("        ", text)


def _claim(one: Finding, claims: Mapping[Finding, Claimed]) -> Iterator[str]:
    if one in claims:
        yield claim_in_words(claims[one])


def _accepted(report: Report, by: Acceptor, paint: Paint) -> Iterator[str]:
    own = [one for one in report.accepted if one.by is by]
    if own:
        yield from ("", f"{_WHERE_ACCEPTED[by]} ({len(own)}):")
    for one in own:
        yield f"  {_head(one.finding, paint)}, {accepted_in_words(one)}"
        for text in (one.finding.text, f"Reason given: {visible(one.reason)}"):
            yield from hung("    ", text)


def _head(one: Finding, paint: Paint) -> str:
    place = f", line {one.line}" if one.line else ""
    return f"{paint(one.severity.value, one.severity.value)}: {one.name}{place}"


def clause_in_words(one: Finding) -> str:
    """The clause behind a finding; one that nobody read says so."""
    return f"[{one.clause}]" if one.is_certain else f"[{one.clause}; from memory: check the edition in force]"


def hung(label: str, text: str) -> list[str]:
    """Text wrapped behind its label, following lines under the text."""
    indent = " " * min(len(label), LABEL + 2)
    return textwrap.wrap(text, WIDTH, initial_indent=label, subsequent_indent=indent, break_on_hyphens=False)
