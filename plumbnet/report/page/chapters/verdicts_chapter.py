"""The verdicts: how many heaters come to what and their figures, for the cover, and the chapter with their stories."""

from collections import Counter
from collections.abc import Iterator

from plumbnet.analysis import Report
from plumbnet.report.page.chapters.picture_chapters import shown_up
from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose import TABLE_HEAD, Paragraph, Table, findings_in_short, silenced_in_words, spoken, table_rows
from plumbnet.report.text import counted, story
from plumbnet.rules import Severity, listed
from plumbnet.rules.facts import FROM_BEST_TO_WORST, TROUBLED, Facts, HeaterFacts
from plumbnet.study.dossier import Dossier

MOST_STORIES = 40
"""Heaters whose story is told in full, those in trouble before others; all stand in the table."""


def verdicts(dossier: Dossier) -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    report = dossier.report
    told = _told(report.heaters)
    yield from (_entry(report.facts, heater) for heater in told)
    if len(told) < len(report.heaters):
        left = len(report.heaters) - len(told)
        yield Paragraph(f"{left} more heaters stand in the table only; the command plumbnet check tells of them all.")


def summary(report: Report) -> Iterator[PageBlock]:
    """How many heaters come to what, and their figures in a table."""
    yield Paragraph(" ".join(_counts(report)))
    if report.heaters:
        yield Table(TABLE_HEAD, tuple(table_rows(report.facts)))


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


def _told(heaters: tuple[HeaterFacts, ...]) -> list[HeaterFacts]:
    """The heaters whose story is told, in the order of the file."""
    chosen = sorted(heaters, key=lambda heater: heater.verdict not in TROUBLED)[:MOST_STORIES]
    names = {heater.name for heater in chosen}
    return [heater for heater in heaters if heater.name in names]


def _entry(facts: Facts, heater: HeaterFacts) -> Entry:
    kind = spoken(heater.kind).partition(" ")[2]
    place = f"{kind}, line {heater.line}" if heater.line else kind
    told = tuple(Paragraph(text, label) for label, text in story(facts, heater))
    verdict = heater.verdict.value
    return Entry(verdict.upper(), verdict, f"{heater.name} ({place})", told, shown_up(heater))
