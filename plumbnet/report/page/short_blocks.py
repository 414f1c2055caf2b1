"""Blocks of a page to the same with long lists of parts told in short."""

from collections.abc import Container
from dataclasses import replace

from plumbnet.report import prose
from plumbnet.report.page.page_content import Entry, PageBlock, PagePicture
from plumbnet.report.prose import lists_in_short


def in_short(block: PageBlock, known: Container[str]) -> PageBlock:
    """The block with each list of many of the `known` names in short; lines and steps stand as they are."""
    match block:
        case prose.Heading() | prose.Paragraph():
            return replace(block, text=lists_in_short(block.text, known))
        case prose.Points(texts):
            return prose.Points(tuple(lists_in_short(text, known) for text in texts))
        case prose.Table(head, rows):
            return prose.Table(head, tuple(tuple(lists_in_short(cell, known) for cell in row) for row in rows))
        case Entry():
            told = tuple(replace(one, text=lists_in_short(one.text, known)) for one in block.told)
            return replace(block, title=lists_in_short(block.title, known), told=told)
        case PagePicture():
            title, words = lists_in_short(block.title, known), lists_in_short(block.words, known)
            return replace(block, title=title, words=words)
        case _:
            return block
