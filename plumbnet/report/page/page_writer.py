"""A dossier to the file to hand over, as HTML or PDF."""

from typing import Literal, TypeAlias

from plumbnet.report.page.html_page import to_html
from plumbnet.report.page.page_chapters import page
from plumbnet.report.page.pdf_page import to_pdf
from plumbnet.study.dossier import Dossier

PageForm: TypeAlias = Literal["html", "pdf"]
PAGE_FORMS: tuple[PageForm, ...] = ("html", "pdf")
"""How a page can be written."""


def page_file(dossier: Dossier, form: PageForm) -> bytes:
    """Everything a dossier has to tell, in one file: the same bytes for the same layout, rules and program.

    Its date is printed as it is. A PDF is on A4 where the units of the report are metric, and else on Letter.
    """
    found = page(dossier)
    if form == "html":
        return to_html(found).encode()
    return to_pdf(found, paper="a4" if dossier.report.facts.units == "metric" else "letter")
