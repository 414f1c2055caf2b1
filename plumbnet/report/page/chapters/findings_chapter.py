"""The chapter of findings: what stands with its clause and what to do, then what the file accepts and why."""

from collections.abc import Iterator, Mapping, Sequence

from plumbnet.analysis import Report
from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose import (
    Heading,
    Paragraph,
    accepted_in_words,
    alike,
    claim_in_words,
    findings_in_short,
    idle_in_words,
    lists_in_short,
    names_in_short,
)
from plumbnet.report.text import clause_in_words
from plumbnet.rules import Accepted, Acceptor, Finding, listed
from plumbnet.study.dossier import Dossier

_MOST_TOLD = 3
"""Findings of one name and one cure that are told word by word."""
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
    for group in alike(report.findings):
        yield _group(report, group, claims)
    for by, title in _TITLES.items():
        own = [one for one in report.accepted if one.by is by]
        if own:
            yield Heading(f"{title} ({len(own)})", 3)
        yield from map(_accepted, own)
    idle = idle_in_words(report.idle)
    if idle:
        yield Paragraph(idle)


def _group(report: Report, group: Sequence[Finding], claims: Mapping[Finding, Paragraph]) -> Entry:
    """Findings that one cure mends: what is found, of those that read alike the first, then what to do, once."""
    alike_texts: dict[str, list[str]] = {}
    named = sorted({one.parts[0] for one in group}, key=len, reverse=True)
    for one in group:
        short = lists_in_short(one.text, report.system.parts)
        alike_texts.setdefault(_without(short, named), []).append(short)
    told = [Paragraph(_with_count(texts)) for texts in list(alike_texts.values())[:_MOST_TOLD]]
    left = sum(map(len, list(alike_texts.values())[_MOST_TOLD:]))
    if left:
        told.append(Paragraph(f"{left} more; the command plumbnet check tells of each."))
    told += [Paragraph(group[0].advice), Paragraph(clause_in_words(group[0]))]
    return _entry(group, (*told, *dict.fromkeys(claims[one] for one in group if one in claims)))


def _without(text: str, names: Sequence[str]) -> str:
    for name in names:
        text = text.replace(name, "")
    return text


def _with_count(texts: Sequence[str]) -> str:
    more = len(texts) - texts.count(texts[0])
    return f"{texts[0]} The same of {more} more." if more else texts[0]


def _accepted(one: Accepted) -> Entry:
    reason = Paragraph(f"{one.reason} ({accepted_in_words(one)})", "reason given")
    return _entry([one.finding], (Paragraph(one.finding.text), reason), mark="accepted")


def _entry(group: Sequence[Finding], told: tuple[Paragraph, ...], *, mark: str = "") -> Entry:
    first = group[0]
    lines = list(dict.fromkeys(str(one.line) for one in group if one.line))
    place = f", line{'s' if len(lines) > 1 else ''} {names_in_short(lines)}" if lines else ""
    parts = tuple(dict.fromkeys(name for one in group for name in one.parts))
    named = listed(parts) if len(group) == 1 else names_in_short(one.parts[0] for one in group)
    title = f"{first.name}: {named}{place}"
    return Entry(mark or first.severity.value, mark or first.severity.value, title, told, parts)
