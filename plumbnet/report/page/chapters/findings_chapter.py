"""The chapter of findings: what stands with its clause and what to do, then what the file accepts and why."""

from collections.abc import Iterator

from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose import (
    Heading,
    Paragraph,
    accepted_in_words,
    claim_in_words,
    findings_in_short,
    idle_in_words,
)
from plumbnet.report.text import clause_in_words
from plumbnet.rules import Accepted, Acceptor, Finding, listed
from plumbnet.study.dossier import Dossier

_TITLES = {
    Acceptor.APPLICANT: "Accepted in the file, by the applicant",
    Acceptor.INSPECTOR: "Accepted by the inspector",
}


def findings(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    report = dossier.report
    if not report.findings:
        yield Paragraph(findings_in_short(stand=False, accepted=report.accepted))
    claims = {one.finding: Paragraph(claim_in_words(one)) for one in report.claimed}
    for one in report.findings:
        told = (Paragraph(one.text), Paragraph(one.advice), Paragraph(clause_in_words(one)))
        yield _entry(one, (*told, claims[one]) if one in claims else told)
    for by, title in _TITLES.items():
        own = [one for one in report.accepted if one.by is by]
        if own:
            yield Heading(f"{title} ({len(own)})", 3)
        yield from map(_accepted, own)
    idle = idle_in_words(report.idle)
    if idle:
        yield Paragraph(idle)


def _accepted(one: Accepted) -> Entry:
    reason = Paragraph(f"{one.reason} ({accepted_in_words(one)})", "reason given")
    return _entry(one.finding, (Paragraph(one.finding.text), reason), mark="accepted")


def _entry(one: Finding, told: tuple[Paragraph, ...], *, mark: str = "") -> Entry:
    place = f", line {one.line}" if one.line else ""
    title = f"{one.name}: {listed(one.parts)}{place}"
    return Entry(mark or one.severity.value, mark or one.severity.value, title, told, one.parts)
