"""A review as blocks of text: comments, every requirement with its answers, what is to be seen on site."""

import textwrap
from collections.abc import Iterator, Sequence
from itertools import groupby

from plumbnet.layout.units import Units
from plumbnet.report.page import TO_WRITE_ON, Entry, PageBlock
from plumbnet.report.prose import (
    DOCUMENT_WIDTH,
    Block,
    Heading,
    Paragraph,
    Points,
    Table,
    accepted_in_words,
    claim_in_words,
)
from plumbnet.report.review.review_words import (
    ANSWERS,
    CHAPTERS,
    AnswerRow,
    answer_rows,
    clause_with_state,
    found_in_words,
)
from plumbnet.rules import Accepted, Answered, AnswerWord, Claimed, Severity, capitalised, listed
from plumbnet.study.review import Comment, Review

SHEET_HEAD = ("no.", "asked", "clause", "of", "answer", "found")
"""The columns of a sheet."""
_SITE = ("to be seen on site", "clause", "seen")


def counts_in_words(review: Review) -> str:
    """How many subjects have which answer."""
    counts = [f"{review.counts.get(word, 0)} {ANSWERS[word]}" for word in AnswerWord]
    return f"{listed(counts)}."


def comment_blocks(review: Review) -> Iterator[PageBlock]:
    """The numbered comments; a sentence where there is none."""
    if not review.comments:
        yield Paragraph("No comments.")
    yield from (_comment(comment, review.report.facts.units) for comment in review.comments)


def _comment(comment: Comment, units: Units) -> Entry:
    """A comment: what it is about, what was found, what to do, by which clause; its parts light up in the picture."""
    one, found = comment.answered, comment.answered.finding
    place = f", line {one.line}" if one.line else ""
    title = f"{one.rule.name}: {listed(one.parts) or 'the layout'}{place}"
    clause = clause_with_state(one.ruling)
    if found is None:
        told = (capitalised(found_in_words(one, units)), one.rule.asks, clause)
    else:
        told = (found.text, found.advice, clause)
    meaning = Severity.NOTE if found is None else found.severity
    mark = "cannot be told" if found is None else found.severity.value
    return Entry(f"{comment.number}. {mark}", meaning.value, title, tuple(map(Paragraph, told)), one.parts)


def requirement_blocks(review: Review) -> Iterator[Block]:
    """Every requirement with its answers, chapter by chapter."""
    for chapter, title in CHAPTERS.items():
        answers = [one for one in review.answers if one.rule.chapter == chapter]
        if answers:
            yield Heading(title, 3)
            yield Table(SHEET_HEAD, tuple(_rows(review, answers)))


def sheet_lines(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """The rows of a sheet as lines of text: what is asked across the page, under it each answer with its subjects."""
    for number, asked, clause, subjects, answer, found in rows:
        if asked:
            yield from textwrap.wrap(
                f"{asked} {clause}", DOCUMENT_WIDTH, subsequent_indent="  ", break_on_hyphens=False
            )
        told = f"{subjects}: {found}" if found else subjects
        head = f"  {number:>4}  {answer:<14}  "
        yield from textwrap.wrap(
            told, DOCUMENT_WIDTH, initial_indent=head, subsequent_indent=" " * len(head), break_on_hyphens=False
        )


def site_blocks(review: Review) -> Iterator[Block]:
    """What no layout can tell, with room for whoever has seen it."""
    rows = tuple((one.asks, clause_with_state(one), TO_WRITE_ON) for one in review.site)
    if rows:
        yield Table(_SITE, rows)


def accepted_blocks(review: Review) -> Iterator[Block]:
    """What is accepted, by whom and why; then what stands though somebody accepts it."""
    report = review.report
    silenced = (f"{_named(one)}: {one.reason} ({accepted_in_words(one)})" for one in report.accepted)
    in_vain = (f"{_named(one)}: {claim_in_words(one)}" for one in report.claimed)
    told = (*silenced, *in_vain)
    if told:
        yield Points(told)


def _named(one: Accepted | Claimed) -> str:
    return f"{one.finding.name}, {one.finding.parts[0]}"


def _rows(review: Review, answers: list[Answered]) -> Iterator[tuple[str, ...]]:
    """Rows of the sheet, what bears on nothing last; a requirement is said in the first of its own, for each code."""
    units = review.report.facts.units
    by_clause = sorted(answers, key=lambda one: (one.rule.name, one.ruling.clause))
    groups = [list(own) for _, own in groupby(by_clause, key=lambda one: (one.rule.name, one.ruling.clause))]
    for group in sorted(groups, key=_bears_on_nothing):
        rule = group[0].rule
        asked, clause = f"{rule.name}: {rule.asks}", clause_with_state(group[0].ruling)
        for row in answer_rows(group, units):
            yield (_number(review, row), asked, clause, row.subjects, ANSWERS[row.word], row.found)
            asked = clause = ""


def _bears_on_nothing(answers: list[Answered]) -> bool:
    return all(one.word is AnswerWord.NOT_APPLICABLE for one in answers)


def _number(review: Review, row: AnswerRow) -> str:
    numbers = [number for one in row.answers if (number := review.number_of(one)) is not None]
    return ", ".join(map(str, numbers))
