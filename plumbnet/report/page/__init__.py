"""The report to hand over: one page with everything, as HTML or as PDF; other pages are made of the same blocks."""

from plumbnet.report.page.chapters import MOST_DRAWN, TO_WRITE_ON, cover, drawn, record_rows
from plumbnet.report.page.notebook_page import system_html
from plumbnet.report.page.page_chapters import board_chapter
from plumbnet.report.page.page_content import Chapter, Entry, Page, PageBlock, PageFrame, PagePicture
from plumbnet.report.page.page_writer import PAGE_FORMS, PageForm, page_bytes, page_file
from plumbnet.report.page.pdf_letters import BOLD, PLAIN, fonts, lettered
from plumbnet.report.page.pdf_page import SIZES, PdfPaper, pdf_document
from plumbnet.report.page.pdf_styles import FAINT, INK
from plumbnet.report.page.picture_slot import Drawn, Laid, Slot, with_pictures
from plumbnet.report.page.svg_element import width_in

__all__ = [
    "BOLD",
    "FAINT",
    "INK",
    "MOST_DRAWN",
    "PAGE_FORMS",
    "PLAIN",
    "SIZES",
    "TO_WRITE_ON",
    "Chapter",
    "Drawn",
    "Entry",
    "Laid",
    "Page",
    "PageBlock",
    "PageForm",
    "PageFrame",
    "PagePicture",
    "PdfPaper",
    "Slot",
    "board_chapter",
    "cover",
    "drawn",
    "fonts",
    "lettered",
    "page_bytes",
    "page_file",
    "pdf_document",
    "record_rows",
    "system_html",
    "width_in",
    "with_pictures",
]
