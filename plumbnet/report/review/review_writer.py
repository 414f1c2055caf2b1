"""Reviews to what is printed or handed over: text, JSON, a table, a page in HTML or PDF."""

from typing import Literal, TypeAlias

from plumbnet.report.page import Entry, PageForm, PageFrame, PagePicture, page_bytes
from plumbnet.report.prose import Block, Heading, Lines, Paragraph, Table, document_text
from plumbnet.report.review.review_blocks import SHEET_HEAD, sheet_lines
from plumbnet.report.review.review_chapters import Boards, review_page
from plumbnet.report.review.review_data import review_document, review_table
from plumbnet.report.review.reviewed_files import ReviewedFiles

ReviewFormat: TypeAlias = Literal["text", "json", "csv"]
"""How reviews can be printed."""


def review_text(files: ReviewedFiles) -> str:
    """The sheets as plain text."""
    page = review_page(files)
    blocks: list[Block] = [Heading(page.title, 1), *(Paragraph(line) for line in page.under)]
    for chapter in page.chapters:
        told = [_as_text(block) for block in chapter.blocks if not isinstance(block, PagePicture | PageFrame)]
        blocks += [Heading(chapter.title), *told] if told else []
    return document_text([*blocks, Paragraph(page.caution)])


def _as_text(block: Block | Entry) -> Block:
    """A block as a terminal has it: there is no room for a sheet of five columns, whose rows become lines."""
    if isinstance(block, Entry):
        return Paragraph(" ".join(one.text for one in block.told), f"{block.mark}: {block.title}")
    return Lines(tuple(sheet_lines(block.rows))) if isinstance(block, Table) and block.head == SHEET_HEAD else block


def review_printed(files: ReviewedFiles, form: ReviewFormat) -> str:
    """The sheets as they are printed in a form."""
    match form:
        case "text":
            return review_text(files)
        case "json":
            return review_document(files) + "\n"
        case "csv":
            return review_table(files)


def review_file(files: ReviewedFiles, form: PageForm, boards: Boards | None = None) -> bytes:
    """The sheets in one file to hand over, with boards on a page in HTML.

    A PDF is on A4 where the units of the first are metric, else on Letter.
    """
    is_metric = bool(files.reviews) and files.reviews[0].report.facts.units != "us"
    return page_bytes(review_page(files, boards), form, is_metric=is_metric)
