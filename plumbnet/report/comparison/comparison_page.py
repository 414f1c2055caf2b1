"""A comparison to the file to hand over, as HTML or PDF: what is read first, and both pictures with what moved."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

from plumbnet.analysis import Report
from plumbnet.report.comparison.comparison_report import (
    DIFFERENCE,
    ComparisonChapter,
    compared_files,
    comparison_chapters,
    comparison_title,
)
from plumbnet.report.page import MOST_DRAWN, Chapter, Page, PageBlock, PageForm, PagePicture, page_bytes
from plumbnet.report.prose import Heading, Paragraph
from plumbnet.report.schematic import RevisionLetters, letters_after, letters_before, revision_schematic
from plumbnet.report.text import CAUTION, counted
from plumbnet.study.compare import Comparison

_PICTURES_BEFORE = "changes"
"""The chapter that stands behind the pictures."""


def comparison_file(compared: Comparison, form: PageForm) -> bytes:
    """All that a comparison tells in one file: the same bytes for the same layouts, rules and program.

    A PDF is on A4 where the units of the later report are metric, and else on Letter.
    """
    return page_bytes(comparison_page(compared), form, is_metric=compared.after.facts.units != "us")


def comparison_page(compared: Comparison) -> Page:
    """The page of a comparison."""
    return Page(
        title=comparison_title(compared),
        under=tuple(f"{label}: {words}" for label, words in compared_files(compared)),
        caution=CAUTION,
        chapters=tuple(_chapters(compared)),
    )


def _chapters(compared: Comparison) -> Iterator[Chapter]:
    for told in comparison_chapters(compared):
        if told.key == _PICTURES_BEFORE:
            yield Chapter("pictures", "Before and after", tuple(_pictures(compared)))
        yield Chapter(told.key, told.title or DIFFERENCE, tuple(_blocks(told)))


def _blocks(told: ComparisonChapter) -> Iterator[PageBlock]:
    """The blocks of a chapter, whose headings stand under its own."""
    for block in told.blocks:
        yield replace(block, level=3) if isinstance(block, Heading) else block


def _pictures(compared: Comparison) -> Iterator[PageBlock]:
    yield _picture("Before", compared.before, letters_before(compared))
    yield _picture("After", compared.after, letters_after(compared))


def _picture(title: str, report: Report, marked: RevisionLetters) -> PageBlock:
    """A picture with what moved marked in it; a sentence in place of one that could not be read on a page."""
    count = len(report.system.parts)
    if count > MOST_DRAWN:
        return Paragraph(f"The piping has {count} parts, too many for a picture on a page.", title)
    letters = marked.letters.items
    said = [f"{name} {letter}" for name, letter in letters.items()]
    words = f"Schematic of {counted(count, 'part')}; marked: {', '.join(said) or 'none'}."
    return PagePicture(title, words, partial(revision_schematic, report, marked))
