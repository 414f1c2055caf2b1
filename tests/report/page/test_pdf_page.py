"""The page as a PDF: its text, its title, its outline, the same bytes every time."""

from dataclasses import replace
from io import BytesIO

import pytest
import yaml
from conftest import layout, system
from pypdf import PageObject, PdfReader
from pypdf.generic import DictionaryObject

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.page.page_chapters import page
from plumbnet.report.page.page_content import Page
from plumbnet.report.page.pdf_page import PdfPaper, to_pdf
from plumbnet.study.dossier.report_dossier import dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}, input: 40000 Btu/h"}
HOSTILE = '<b>bold</b> </para> &amp; "x" \x1b[2J \u202e 漢 $x_1$ ' + "long " * 700


def written(report: Report, paper: PdfPaper = "a4") -> PdfReader:
    return PdfReader(BytesIO(to_pdf(page(dossier(report)), paper=paper)))


def fonts_of(sheet: PageObject) -> list[str]:
    """Names of the fonts of a sheet; a plus in it says that the font is embedded as far as it is used."""
    resources = sheet["/Resources"].get_object()
    assert isinstance(resources, DictionaryObject)
    fonts = resources["/Font"].get_object()
    assert isinstance(fonts, DictionaryObject)
    found = [font.get_object() for font in fonts.values()]
    return [str(font["/BaseFont"]) for font in found if isinstance(font, DictionaryObject)]


@pytest.fixture(scope="module")
def hill() -> Page:
    return page(dossier(plumbnet.check(replace(system(HOUSE, **RELIEVED), title="The house on the hill"))))


@pytest.fixture(scope="module")
def hill_pdf(hill: Page) -> bytes:
    return to_pdf(hill, paper="a4")


@pytest.fixture(scope="module")
def house(hill_pdf: bytes) -> PdfReader:
    return PdfReader(BytesIO(hill_pdf))


def test_text_can_be_searched_in_and_beside_pictures(house: PdfReader) -> None:
    words = " ".join(" ".join(each.extract_text() for each in house.pages).split())
    for part in (
        "The house on the hill",
        "its way back is stopped by cv (between street and tee)",
        "trapped-expansion: heater",
        "what opens as the pressure climbs",
        "limit 80 psi (fixture tap)",
        "never plug, cap or remove one",
        "IAPWS-IF97",
    ):
        assert part in words, part


def test_document_has_its_title_its_language_and_its_chapters(house: PdfReader) -> None:
    assert house.metadata is not None
    assert house.metadata.title == "The house on the hill"
    assert house.metadata.creation_date_raw == house.metadata.modification_date_raw
    assert str(house.root_object["/Lang"]) == "en"
    titles = [str(entry["/Title"]) for entry in house.outline if not isinstance(entry, list)]
    assert titles[:3] == ["Cover", "Verdicts", "Piping"]


def test_every_font_is_embedded(house: PdfReader) -> None:
    fonts = {str(font) for sheet in house.pages for font in fonts_of(sheet)}
    assert fonts
    assert all("+DejaVuSans" in font for font in fonts), fonts


def test_every_sheet_says_which_it_is(house: PdfReader) -> None:
    count = len(house.pages)
    for number, sheet in enumerate(house.pages, 1):
        assert f"{number} of {count}" in sheet.extract_text()


def test_sheets_are_of_the_paper_asked_for() -> None:
    report = plumbnet.check(system("street -> tap.cold"))
    sizes = {paper: written(report, paper).pages[0].mediabox for paper in ("a4", "letter")}
    assert (round(sizes["a4"].width), round(sizes["a4"].height)) == (595, 842)
    assert (round(sizes["letter"].width), round(sizes["letter"].height)) == (612, 792)


def test_the_same_page_is_the_same_file(hill: Page, hill_pdf: bytes) -> None:
    assert to_pdf(hill, paper="a4") == hill_pdf


def test_hostile_words_are_text() -> None:
    document = yaml.safe_load(layout(HOUSE, **RELIEVED))
    document["title"] = HOSTILE
    document["accept"] = [{"finding": "trapped-expansion", "part": "heater", "reason": HOSTILE}]
    document["scenarios"] = {"<b>" + "n" * 3000: {"note": HOSTILE, "change": [{"remove": "cv"}]}}
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode(), file="a" * 3000))
    words = "".join(each.extract_text() for each in written(report).pages)
    assert "<b>bold</b> </para> &amp;" in words
    assert "\\u6f22" in words
    assert not {"\x1b", "\u202e"} & set(words)
