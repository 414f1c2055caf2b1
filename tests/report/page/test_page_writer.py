"""The file to hand over."""

from io import BytesIO

from conftest import system
from pypdf import PdfReader

import plumbnet
from plumbnet.report.page.page_writer import page_file
from plumbnet.study.dossier.report_dossier import dossier

REPORT = plumbnet.check(system("street -> tap.cold"))


def test_page_is_written_as_html_or_pdf_with_its_date() -> None:
    assert b"Date: 3 May 2031" in page_file(dossier(REPORT, date="3 May 2031"), "html")
    words = PdfReader(BytesIO(page_file(dossier(REPORT, date="3 May 2031"), "pdf"))).pages[0].extract_text()
    assert "Date: 3 May 2031" in words


def test_paper_follows_the_units() -> None:
    metric = plumbnet.check(REPORT.system, units="metric")
    widths = [PdfReader(BytesIO(page_file(dossier(each), "pdf"))).pages[0].mediabox.width for each in (REPORT, metric)]
    assert [round(width) for width in widths] == [612, 595]
