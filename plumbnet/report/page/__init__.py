"""The report to hand over: one page with everything, as HTML or as PDF; other pages are made of the same blocks."""

from plumbnet.report.page.chapters import MOST_DRAWN, TO_WRITE_ON, cover, drawn, record_rows
from plumbnet.report.page.notebook_page import system_html
from plumbnet.report.page.page_content import Chapter, Entry, Page, PageBlock, PagePicture
from plumbnet.report.page.page_writer import PAGE_FORMS, PageForm, page_bytes, page_file

__all__ = [
    "MOST_DRAWN",
    "PAGE_FORMS",
    "TO_WRITE_ON",
    "Chapter",
    "Entry",
    "Page",
    "PageBlock",
    "PageForm",
    "PagePicture",
    "cover",
    "drawn",
    "page_bytes",
    "page_file",
    "record_rows",
    "system_html",
]
