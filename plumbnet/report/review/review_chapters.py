"""Reviews to chapters: a cover over all files, then each file with its own cover, comments, sheet and record."""

from collections.abc import Callable, Iterator, Mapping

from plumbnet.report.page import Chapter, Page, PageBlock, PageFrame, board_chapter, cover, drawn, record_rows
from plumbnet.report.prose import Paragraph, Points, Table, listed_whole
from plumbnet.report.review.review_blocks import (
    accepted_blocks,
    comment_blocks,
    counts_in_words,
    requirement_blocks,
    site_blocks,
)
from plumbnet.report.review.reviewed_files import ReviewedFiles
from plumbnet.report.text import CAUTION, counted
from plumbnet.rules import AnswerWord, listed, rules_in_words
from plumbnet.study.review import Review

_FILES = ("file", "rules", "verdicts", "broken", "cannot be told", "comments")


Boards = Mapping[int, PageFrame]
"""Boards by the place of their review among all, each on which the piping of that file is touched."""


def review_page(files: ReviewedFiles, boards: Boards | None = None) -> Page:
    """The page of one review, or of several under a cover that lists them; a board stands behind its piping."""
    found = boards or {}
    if len(files.reviews) == files.count == 1:
        (only,) = files.reviews
        title = only.report.system.title or only.report.system.record.file
        return Page(f"Review: {title}", tuple(_under(only)), CAUTION, tuple(_chapters(only, "", "", found.get(0))))
    chapters = [Chapter("files", "Files", tuple(_files(files)))]
    for number, review in enumerate(files.reviews, start=1):
        before = f"{number}. {review.report.system.record.file}: "
        chapters += _chapters(review, f"f{number}-", before, found.get(number - 1))
    return Page(f"Review of {counted(files.count, 'file')}", (), CAUTION, tuple(chapters))


def _chapters(review: Review, key: str, before: str, board: PageFrame | None) -> Iterator[Chapter]:
    """The chapters of a file, less those that are empty; the first of one among several opens a sheet."""
    for number, (name, title, blocks) in enumerate(CHAPTERS_OF_A_FILE):
        written = tuple(blocks(review))
        if written:
            yield Chapter(key + name, before + title, written, opens_sheet=bool(before) and number == 0)
        if board is not None and name == "piping":
            yield board_chapter(board, key, before)


def _under(review: Review) -> Iterator[str]:
    yield f"File: {review.report.system.record.file}"
    yield f"Rules: {review.report.rules.in_full}"
    if review.reviewer:
        yield f"Reviewed by: {review.reviewer}"
    if review.date:
        yield f"Date: {review.date}"


def _files(files: ReviewedFiles) -> Iterator[PageBlock]:
    """The table of all files, what is wrong with those not understood, and what others are."""
    if files.reviews:
        yield Table(_FILES, tuple(map(_row, files.reviews)))
    if files.refused:
        yield Paragraph("Not understood, and so not reviewed:")
        yield Points(tuple(one.words for one in files.refused))
    if files.others:
        yield Paragraph("Found beside them, and no layouts:")
        told = (f"{one.file}: {one.sort}; {fault.sentence}" for one in files.others for fault in one.faults)
        yield Points(tuple(told))


def _row(review: Review) -> tuple[str, ...]:
    report = review.report
    verdicts = dict.fromkeys(heater.verdict.value for heater in report.heaters)
    return (
        report.system.record.file,
        rules_in_words(report.rules.named),
        listed(list(verdicts)) or "nothing is heated",
        str(review.counts.get(AnswerWord.BROKEN, 0)),
        str(review.counts.get(AnswerWord.UNTOLD, 0)),
        str(len(review.comments)),
    )


def _cover(review: Review) -> Iterator[PageBlock]:
    yield Paragraph(f"Requirements: {counts_in_words(review)}")
    yield from cover(review.report, reviewer=review.reviewer, date=review.date)


def _piping(review: Review) -> Iterator[PageBlock]:
    yield drawn(review.report, "The piping", date=review.date)


def _assumed(review: Review) -> Iterator[PageBlock]:
    assumed = review.report.facts.assumed
    if assumed:
        yield Points(tuple(f"{words}: {listed_whole(parts)}" for words, parts in assumed.items()))


def _record(review: Review) -> Iterator[PageBlock]:
    reviewer = (("reviewed by", review.reviewer),) if review.reviewer else ()
    yield Table(("what", "value"), (*record_rows(review.report, date=review.date), *reviewer))


CHAPTERS_OF_A_FILE: tuple[tuple[str, str, Callable[[Review], Iterator[PageBlock]]], ...] = (
    ("cover", "Cover", _cover),
    ("comments", "Comments", comment_blocks),
    ("piping", "Piping", _piping),
    ("requirements", "Requirements", requirement_blocks),
    ("site", "To be seen on site", site_blocks),
    ("accepted", "Accepted", accepted_blocks),
    ("assumptions", "Taken for granted", _assumed),
    ("record", "Record", _record),
)
"""Every chapter of a file: its name in links, its title, and what it holds of a review."""
