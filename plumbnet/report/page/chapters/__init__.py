"""Chapters of the page: each what it holds of a dossier, as blocks."""

from plumbnet.report.page.chapters.calculation_chapter import calculation
from plumbnet.report.page.chapters.closing_chapters import assumptions_chapter, record_chapter, record_rows
from plumbnet.report.page.chapters.cover_chapter import TO_WRITE_ON, cover
from plumbnet.report.page.chapters.findings_chapter import findings
from plumbnet.report.page.chapters.margins_chapter import how_far
from plumbnet.report.page.chapters.picture_chapters import MOST_DRAWN, drawn, ladders, piping
from plumbnet.report.page.chapters.remedies_chapter import cures
from plumbnet.report.page.chapters.scenarios_chapter import scenarios
from plumbnet.report.page.chapters.together_chapter import together
from plumbnet.report.page.chapters.verdicts_chapter import summary, verdicts

__all__ = [
    "MOST_DRAWN",
    "TO_WRITE_ON",
    "assumptions_chapter",
    "calculation",
    "cover",
    "cures",
    "drawn",
    "findings",
    "how_far",
    "ladders",
    "piping",
    "record_chapter",
    "record_rows",
    "scenarios",
    "summary",
    "together",
    "verdicts",
]
