"""A comparison as a page."""

from dataclasses import replace
from io import BytesIO

from conftest import layout
from pages import Reading
from pypdf import PdfReader
from reviewing import requirement, review, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.comparison.comparison_page import comparison_file, comparison_page
from plumbnet.report.page.page_content import PagePicture
from plumbnet.report.prose.prose_blocks import Heading, Paragraph
from plumbnet.study.compare.review_file import last_review
from plumbnet.study.compare.whole_comparison import Comparison, comparison

RUNS = "street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold"
ACCEPT = "accept: [{finding: relief-below-input, part: heater/relief, reason: so}]\n"


def checked(capacity: int = 50_000, runs: str = RUNS, more: str = "") -> Report:
    text = (
        layout(runs, heater=f"relief: {{pressure: 150 psi, temperature: 210 degF, capacity: {capacity} Btu/h}}") + more
    )
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))


def whole() -> Comparison:
    before = checked()
    asked = last_review(written(review(before, requirement("a", "heater", number=1))), before, file="old.json")
    tanked = checked(30_000, f"{RUNS}\ntee -> tank", ACCEPT)
    return comparison(before, plumbnet.check(tanked.system, rules="ipc-2021"), asked)


COMPARED = whole()


def test_chapters_stand_in_the_order_in_which_a_reviewer_reads_them() -> None:
    assert [chapter.title for chapter in comparison_page(COMPARED).chapters] == [
        "First to read",
        "Other rules than before",
        "What the last review asked",
        "What differs",
        "Before and after",
        "What was changed",
        "Assumed where the later file says nothing",
        "Record",
    ]


def test_both_pictures_say_what_is_marked_in_them() -> None:
    (pictures,) = (chapter.blocks for chapter in comparison_page(COMPARED).chapters if chapter.key == "pictures")
    before, after = pictures
    assert isinstance(before, PagePicture)
    assert isinstance(after, PagePicture)
    assert before.words == "Schematic of 6 parts; marked: heater/relief C."
    assert after.words == "Schematic of 7 parts; marked: heater/relief C, tank A."
    nothing = comparison_page(comparison(checked(), checked()))
    (chapter,) = (chapter for chapter in nothing.chapters if chapter.key == "pictures")
    assert isinstance(chapter.blocks[0], PagePicture)
    assert chapter.blocks[0].words.endswith("; marked: none.")


def test_headings_of_heaters_stand_below_those_of_chapters() -> None:
    (answers,) = (chapter.blocks for chapter in comparison_page(COMPARED).chapters if chapter.key == "answers")
    assert [block.level for block in answers if isinstance(block, Heading)] == [3]


def test_picture_too_large_for_a_page_is_told_instead() -> None:
    taps = "\n".join(f"tee -> tap{number}.cold" for number in range(1, 320))
    large = checked(runs=f"{RUNS}\n{taps}")
    (chapter,) = (
        chapter for chapter in comparison_page(comparison(checked(), large)).chapters if chapter.key == "pictures"
    )
    assert chapter.blocks[1] == Paragraph(
        f"The piping has {len(large.system.parts)} parts, too many for a picture on a page.", "After"
    )


def test_html_is_whole_and_names_what_moved() -> None:
    text = comparison_file(COMPARED, "html").decode()
    page = Reading(text)
    assert page.faults == []
    assert text.count("<svg") == 2
    assert "added by the revision" in text
    assert "new error relief-below-input (heater/relief), and accepted by the applicant" in text


def test_pdf_says_the_same_on_the_paper_of_the_units() -> None:
    for units, wide in (("us", 612), ("metric", 595)):
        compared = replace(COMPARED, after=plumbnet.check(COMPARED.after.system, units=units))  # type: ignore[arg-type]  # each is one
        pages = PdfReader(BytesIO(comparison_file(compared, "pdf"))).pages
        assert round(pages[0].mediabox.width) == wide
        words = " ".join(page.extract_text() for page in pages)
        assert "First to read" in words
        assert "added by the revision" in words


def test_same_comparison_is_the_same_bytes() -> None:
    assert comparison_file(COMPARED, "html") == comparison_file(whole(), "html")
    assert comparison_file(COMPARED, "pdf") == comparison_file(whole(), "pdf")
