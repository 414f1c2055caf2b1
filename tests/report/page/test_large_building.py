"""The report of a hotel of eighty rooms, as it is handed over: few sheets, well filled, and nothing lost."""

from io import BytesIO

import pytest
from hotel import hotel
from pypdf import PdfReader

import plumbnet
from plumbnet.report.formats.json1 import in_order, report_fields
from plumbnet.report.page.page_chapters import IN_SHORT, page
from plumbnet.report.page.pdf_page import to_pdf
from plumbnet.study.dossier.report_dossier import dossier

ROOMS = 80
MOST_SHEETS = 14
FEWEST_LINES = 6


@pytest.fixture(scope="module")
def report() -> plumbnet.Report:
    return plumbnet.check(plumbnet.read_bytes(hotel(ROOMS).encode(), file="hotel.yaml"))


@pytest.fixture(scope="module")
def sheets(report: plumbnet.Report) -> list[list[str]]:
    read = PdfReader(BytesIO(to_pdf(page(dossier(report)), paper="letter")))
    return [sheet.extract_text().splitlines() for sheet in read.pages]


def test_report_of_a_hotel_has_few_sheets_and_none_nearly_empty(sheets: list[list[str]]) -> None:
    assert len(sheets) <= MOST_SHEETS
    assert min(map(len, sheets)) >= FEWEST_LINES


def test_first_sheet_says_what_must_be_done(sheets: list[list[str]]) -> None:
    first = " ".join(" ".join(sheets[0]).split())
    assert "What must be done" in first
    assert "north-heater-1 and 2: Fit an expansion tank of 150 gal" in first
    assert "south-heater-1 and 2: Fit an expansion tank of 80 gal" in first


def test_rooms_are_told_in_ranges_and_where_each_name_is(sheets: list[list[str]]) -> None:
    words = " ".join(" ".join(line for sheet in sheets for line in sheet).split())
    assert f"r0-cold to r{ROOMS - 1}-cold" in words
    assert "r57-cold" not in words
    assert IN_SHORT in words


def test_heaters_that_share_their_water_have_one_sheet(sheets: list[list[str]]) -> None:
    lines = [line for sheet in sheets for line in sheet if line.startswith("Expansion tank for")]
    assert lines == ["Expansion tank for north-heater-1 and 2", "Expansion tank for south-heater-1 and 2"]


def test_nothing_is_lost_for_programs(report: plumbnet.Report) -> None:
    assert "r57-cold" in in_order(report_fields(report))
