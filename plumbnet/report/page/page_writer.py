"""A dossier to the file to hand over, as HTML or PDF."""

from typing import Literal, TypeAlias

from plumbnet.report.page.html_page import to_html
from plumbnet.report.page.page_chapters import page
from plumbnet.report.page.page_content import Page, PageFrame
from plumbnet.report.page.pdf_page import to_pdf
from plumbnet.study.dossier import Dossier

PageForm: TypeAlias = Literal["html", "pdf"]
PAGE_FORMS: tuple[PageForm, ...] = ("html", "pdf")
"""How a page can be written."""


def page_file(dossier: Dossier, form: PageForm, board: PageFrame | None = None) -> bytes:
    """Everything a dossier has to tell, in one file: the same bytes for the same layout, rules and program.

    Its date is printed as it is; a `board` stands on a page in HTML alone. A PDF is on A4 where the units of the report
    are metric, and else on Letter.
    """
    return page_bytes(page(dossier, board), form, is_metric=dossier.report.facts.units != "us")


def page_bytes(written: Page, form: PageForm, *, is_metric: bool) -> bytes:
    """A page as a file of that form; a PDF on A4 where units are metric, and else on Letter."""
    return to_html(written).encode() if form == "html" else to_pdf(written, paper="a4" if is_metric else "letter")
