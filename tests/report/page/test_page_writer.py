"""The file to hand over."""

from dataclasses import replace
from functools import cache
from io import BytesIO

from conftest import system
from pypdf import PageObject, PdfReader

import plumbnet
from plumbnet.layout.units.units import Units
from plumbnet.report.page.page_writer import page_file
from plumbnet.study.dossier.report_dossier import dossier

REPORT = plumbnet.check(system("street -> tap.cold"))


DATED = dossier(REPORT, date="3 May 2031")


@cache
def first_sheet(units: Units) -> PageObject:
    own = replace(DATED, report=plumbnet.check(REPORT.system, units=units))
    return PdfReader(BytesIO(page_file(own, "pdf"))).pages[0]


def test_page_is_written_as_html_or_pdf_with_its_date() -> None:
    assert b"Date: 3 May 2031" in page_file(DATED, "html")
    assert "Date: 3 May 2031" in first_sheet("us").extract_text()


def test_paper_follows_the_units() -> None:
    assert round(first_sheet("us").mediabox.width) == 612
    assert round(first_sheet("metric").mediabox.width) == 595
