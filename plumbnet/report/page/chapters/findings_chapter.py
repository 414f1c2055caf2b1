"""The chapter of findings: what stands with its clause and what to do, then what the file accepts and why."""

from collections.abc import Iterator

from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose import Heading, Paragraph
from plumbnet.report.text import clause_in_words
from plumbnet.rules import Finding, listed
from plumbnet.study.dossier import Dossier


def findings(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    report = dossier.report
    if not report.findings:
        yield Paragraph("No findings.")
    for one in report.findings:
        yield _entry(one, (Paragraph(one.text), Paragraph(one.advice), Paragraph(clause_in_words(one))))
    if report.accepted:
        yield Heading(f"Accepted in the file ({len(report.accepted)})", 3)
    for accepted in report.accepted:
        reason = Paragraph(f"{accepted.reason} (line {accepted.line})", "reason given")
        yield _entry(accepted.finding, (Paragraph(accepted.finding.text), reason), mark="accepted")
    if report.idle:
        names = [f"{idle.finding} of {idle.part}" for idle in report.idle]
        yield Paragraph(f"Accepted in the file but not found: {listed(names)}.")


def _entry(one: Finding, told: tuple[Paragraph, ...], *, mark: str = "") -> Entry:
    place = f", line {one.line}" if one.line else ""
    title = f"{one.name}: {listed(one.parts)}{place}"
    return Entry(mark or one.severity.value, mark or one.severity.value, title, told, one.parts)
