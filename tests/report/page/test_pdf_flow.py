"""Blocks set on sheets."""

from matplotlib.figure import Figure
from reportlab.platypus import Flowable, NextPageTemplate, PageBreak, Table
from reportlab.platypus import Paragraph as Text

from plumbnet.report.page.page_content import Chapter, Entry, Page, PageBlock, PagePicture
from plumbnet.report.page.pdf_flow import PageOpening, PdfFlow
from plumbnet.report.page.pdf_letters import fonts
from plumbnet.report.page.picture_slot import Drawn, Slot
from plumbnet.report.prose import prose_blocks as document


def flow(*blocks: PageBlock, width_in: float = 5.0) -> list[Flowable]:
    fonts()
    page = Page("t", (), "c", (Chapter("k", "chapter", blocks),))
    return PdfFlow(page, {(0, 0): Drawn(0, width_in, 3.0)}, 500.0, 700.0).story()[2:]


def texts(found: list[Flowable]) -> list[str]:
    return [each.text for each in found if isinstance(each, Text)]


def test_every_block_is_set_as_text_and_never_as_markup() -> None:
    found = flow(
        document.Heading("a <b>", 3),
        document.Paragraph("c & d", "label"),
        document.Points(("one", "two")),
        document.Lines(("x  y",)),
        Entry("error", "error", "a finding", (document.Paragraph("told"),)),
    )
    words = texts(found)
    assert words[1:4] == ["a &lt;b&gt;", "<b>label:</b> c &amp; d", "one"]
    assert words[-1] == "told"
    assert "a finding" in words[-2]


def test_entry_that_only_lights_up_parts_is_not_printed() -> None:
    assert texts(flow(Entry("TRAPPED", "trapped", "heater", (), ("heater",)))) == ["chapter"]


def test_table_repeats_its_head_and_splits_no_row() -> None:
    *_, table = flow(document.Table(("a", "b"), (("1", "2" * 5000),)))
    assert isinstance(table, Table)
    assert table.repeatRows == 1
    assert table.splitInRow == 0


def test_chapter_with_a_wide_picture_has_sheets_of_its_own() -> None:
    wide = flow(PagePicture("p", "w", Figure), width_in=12.0)
    assert [type(each) for each in wide[:3]] == [NextPageTemplate, PageBreak, PageOpening]
    assert [type(each) for each in wide[-2:]] == [NextPageTemplate, PageBreak]
    narrow = flow(PagePicture("p", "w", Figure))
    assert not any(isinstance(each, PageBreak) for each in narrow)
    assert any(isinstance(each, Slot) for each in narrow)
