"""The verdicts: how many heaters come to what and their figures, for the cover, and the chapter with their stories."""

from collections import Counter
from collections.abc import Iterator

from plumbnet.analysis import Report
from plumbnet.report.page.chapters.heater_groups import alike_heaters
from plumbnet.report.page.chapters.picture_chapters import shown_up
from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose import (
    TABLE_HEAD,
    Paragraph,
    Table,
    findings_in_short,
    names_in_short,
    silenced_in_words,
    spoken,
    table_rows,
)
from plumbnet.report.text import counted, story
from plumbnet.rules import Severity, listed
from plumbnet.rules.facts import FROM_BEST_TO_WORST, TROUBLED, Facts, HeaterFacts
from plumbnet.study.dossier import Dossier

MOST_STORIES = 40
"""Stories that are told in full, those of heaters in trouble before others, and rows of the table."""
_TROUBLED = frozenset(verdict.value for verdict in TROUBLED)


def verdicts(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    report = dossier.report
    groups = alike_heaters(report.facts)
    told = _told(groups)
    yield from (_entry(report.facts, group) for group in told)
    left = sum(map(len, groups)) - sum(map(len, told))
    if left:
        yield Paragraph(f"{left} more heaters stand in the table only; the command plumbnet check tells of them all.")


def summary(report: Report) -> Iterator[PageBlock]:
    """How many heaters come to what, and their figures in a table."""
    yield Paragraph(" ".join(_counts(report)))
    if report.heaters:
        rows = _alike_rows(report.facts)
        yield Table(TABLE_HEAD, tuple(rows[:MOST_STORIES]))
        if len(rows) > MOST_STORIES:
            yield Paragraph(f"{len(rows) - MOST_STORIES} more rows; the command plumbnet check shows every heater.")


def _alike_rows(facts: Facts) -> list[tuple[str, ...]]:
    """The rows of the table, heaters of the same figures in one, those in trouble first where they are too many."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for name, *figures in table_rows(facts):
        alike.setdefault(tuple(figures), []).append(name)
    rows = [(names_in_short(names), *figures) for figures, names in alike.items()]
    return sorted(rows, key=lambda row: row[1] not in _TROUBLED) if len(rows) > MOST_STORIES else rows


def _counts(report: Report) -> Iterator[str]:
    counts = Counter(heater.verdict for heater in report.heaters)
    each = [f"{counts[verdict]} {verdict.value}" for verdict in reversed(FROM_BEST_TO_WORST) if counts[verdict]]
    yield f"{counted(len(report.heaters), 'heater')}: {listed(each)}." if each else "Nothing here heats water."
    severities = Counter(finding.severity for finding in report.findings)
    found = [counted(severities[severity], severity.value) for severity in Severity if severities[severity]]
    if found:
        yield f"Findings: {listed(found)}."
        if report.accepted:
            yield f"Besides these, {silenced_in_words(report.accepted)}."
    else:
        yield findings_in_short(stand=False, accepted=report.accepted)


def _told(groups: list[list[HeaterFacts]]) -> list[list[HeaterFacts]]:
    """Heaters whose story is told, in the order of the file."""
    ranked = sorted(range(len(groups)), key=lambda number: groups[number][0].verdict not in TROUBLED)
    return [groups[number] for number in sorted(ranked[:MOST_STORIES])]


def _entry(facts: Facts, group: list[HeaterFacts]) -> Entry:
    first = group[0]
    kind = spoken(first.kind).partition(" ")[2]
    lines = [str(heater.line) for heater in group if heater.line]
    many = "s" if len(group) > 1 else ""
    place = f"{kind}{many}, line{'s' if len(lines) > 1 else ''} {names_in_short(lines)}" if lines else f"{kind}{many}"
    told = tuple(Paragraph(text, label) for label, text in story(facts, first))
    if many:
        told = (Paragraph(f"{first.name}, and of the others the same.", "told of"), *told)
    verdict = first.verdict.value
    title = f"{names_in_short([heater.name for heater in group])} ({place})"
    lit = tuple(dict.fromkeys(name for heater in group[:MOST_STORIES] for name in shown_up(heater)))
    return Entry(verdict.upper(), verdict, title, told, lit)
