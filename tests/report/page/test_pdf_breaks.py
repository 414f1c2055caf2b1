"""What stays together on sheets: headings, rows, pictures; read back from the sheets of documents of all lengths."""

from io import BytesIO

import pytest
from pypdf import PdfReader
from reportlab.platypus import Flowable, Table
from reportlab.platypus import Paragraph as Text

from plumbnet.report import prose
from plumbnet.report.page.page_content import Chapter, Entry, Page, PageBlock
from plumbnet.report.page.pdf_breaks import kept
from plumbnet.report.page.pdf_page import to_pdf
from plumbnet.report.page.pdf_styles import BODY, HEADINGS


def sheets(*blocks: PageBlock) -> list[list[str]]:
    """The lines of each sheet, less its foot."""
    page = Page("A title", (), "A caution.", (Chapter("one", "A chapter", tuple(blocks)),))
    read = PdfReader(BytesIO(to_pdf(page, paper="letter")))
    return [sheet.extract_text().splitlines()[2:] for sheet in read.pages]


def lines(count: int) -> prose.Points:
    return prose.Points(tuple(f"line {number}" for number in range(count)))


FEW = 3
ROOM = 32
"""Lines above headings and a table from which on these have no room on the first sheet."""
ROWS = tuple((f"row {number}", "x") for number in range(12))


@pytest.mark.parametrize("before", range(20, 46))
def test_no_heading_ends_a_sheet_and_no_row_stands_alone(before: int) -> None:
    table = prose.Table(("what", "value"), ROWS * 3)
    found = sheets(lines(before), prose.Heading("Over rows", 3), prose.Heading("Under", 4), table, lines(2))
    assert any(line.startswith("row") for line in found[0]) == (before < ROOM), "what has room is not put off"
    for sheet in found:
        assert not sheet[-1].startswith(("Over", "Under", "what"))
        rows = sum(line.startswith("row") for line in sheet)
        assert rows != 1


@pytest.mark.parametrize("before", range(30, 48))
def test_entry_stands_whole_where_it_is_no_larger_than_a_part_of_a_sheet(before: int) -> None:
    told = tuple(prose.Paragraph(f"told {number}") for number in range(6))
    found = sheets(lines(before), Entry("OPEN", "open", "a heater", told))
    assert sum(any("told" in line or "OPEN" in line for line in sheet) for sheet in found) == 1


@pytest.mark.parametrize("before", range(30, 48, 3))
def test_short_table_is_never_parted(before: int) -> None:
    found = sheets(lines(before), prose.Heading("Over rows", 3), prose.Table(("what", "value"), ROWS[:6]))
    assert sum(any("row" in line for line in sheet) for sheet in found) == 1


def test_rows_and_entries_taller_than_a_sheet_are_set_all_the_same() -> None:
    tall = " ".join(["long"] * 700)
    entry = Entry("OPEN", "open", "h", (prose.Paragraph(tall * 9),) * 3)
    assert len(sheets(prose.Table(("what", "value"), ((tall, "x"),) * 4), entry)) > FEW


def test_nothing_is_lost_and_order_stays() -> None:
    flow: list[Flowable] = [Text("a", HEADINGS[2]), Text("b", BODY), Table([["c"]]), Text("d", HEADINGS[3])]
    breaks = [piece for piece in kept(flow, 400.0, 600.0) if piece in flow]
    assert breaks == flow
