"""Worksheets and keys as they are printed."""

import re
from collections.abc import Sequence
from io import BytesIO

import pytest
from matplotlib.figure import Figure
from matplotlib.text import Text
from pypdf import PageObject, PdfReader

from plumbnet.drawing.fitted_picture import PicturePlace
from plumbnet.report.page.pdf_page import SIZES, PdfPaper
from plumbnet.report.worksheets.paper.printed_sheets import PictureFor, worksheets_pdf
from plumbnet.report.worksheets.paper.worksheet_picture import piping_figure
from plumbnet.report.worksheets.worksheet_content import key, worksheet
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.walk_choice import answer_walks

DEALT = exercises(7, 2, 3)
SHEETS, KEYS = [worksheet(one) for one in DEALT], [key(one, answer_walks(one)) for one in DEALT]


def blank(width_of: int) -> PictureFor:
    """A picture without a line, as wide as one of the places."""
    return lambda places: Figure((places[width_of].width / 72, 1.0))


def printed(*, upright: bool = True, paper: PdfPaper = "letter", count: int = 3) -> bytes:
    pictures = {one.number: blank(0 if upright else 1) for one in SHEETS}
    return worksheets_pdf(SHEETS[:count], KEYS[:count], paper, pictures, {one.number: blank(0) for one in SHEETS})


def pages(content: bytes) -> list[PageObject]:
    return list(PdfReader(BytesIO(content)).pages)


def words(page: PageObject) -> str:
    return " ".join(page.extract_text().split())


def test_each_worksheet_has_one_sheet_with_its_question_and_two_keys_share_one() -> None:
    told = [words(page) for page in pages(printed())]
    assert [(text.count("Question:"), text.count("Key to worksheet")) for text in told] == [
        (1, 0),
        (1, 0),
        (1, 0),
        (0, 2),
        (0, 1),
    ]
    for one, text in zip(SHEETS, told, strict=False):
        assert f"Worksheet {one.number}: {one.place}" in text
        assert " ".join(one.prompt.split()) in text
    assert f"{KEYS[1].answers[0][0]} {KEYS[1].answers[0][1]}" in told[3]
    assert KEYS[1].in_short[0].tries[0][:40] in told[3]
    assert all(text.count("never plug, cap or remove") == 1 for text in told)


def test_picture_stands_on_the_sheet_of_its_question_with_every_part_and_its_names_in_seven_points() -> None:
    (one,) = exercises(7, 5, 1, about="verdict")
    sheet, figures = worksheet(one), list[Figure]()

    def picture(places: Sequence[PicturePlace]) -> Figure | None:
        figures.append(piping_figure(one.system, sheet.asked_about, places) or Figure())
        return figures[-1]

    (page,) = pages(worksheets_pdf([sheet], [], "letter", {sheet.number: picture}, {}))
    told = words(page)
    devices = [name for name, part in one.system.parts.items() if not part.is_fitting]
    assert all(piece in told for name in devices for piece in re.split("[-/]", name))
    texts = [text for text in figures[0].axes[0].findobj(Text) if isinstance(text, Text)]
    sizes = [float(text.get_fontsize()) for text in texts if len(text.get_text()) > 1]  # a symbol holds one letter
    assert min(sizes) >= 7.0 - 1e-6


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("upright", [True, False])
def test_sheets_are_of_the_paper_that_was_asked_for_upright_or_lying(paper: PdfPaper, *, upright: bool) -> None:
    found = pages(printed(upright=upright, paper=paper, count=1))
    wide, high = map(round, SIZES[paper])
    sizes = [tuple(round(float(side)) for side in page.mediabox[2:]) for page in found]
    assert sizes == [(wide, high) if upright else (high, wide), (wide, high)]


def test_key_without_room_for_a_picture_is_set_without_it() -> None:
    content = worksheets_pdf(SHEETS[:2], KEYS[:2], "letter", {}, {one.number: lambda _: None for one in SHEETS})
    assert [words(page).count("Key to worksheet") for page in pages(content)] == [0, 0, 2]


def test_piping_that_no_picture_can_show_is_told_in_words() -> None:
    (page,) = pages(worksheets_pdf(SHEETS[:1], [], "letter", {1: lambda _: None}, {}))
    name, kind, fields = SHEETS[0].parts[0]
    assert f"Parts: {name} ({kind}) {fields}".strip() in words(page)
    assert f"Water flows: {SHEETS[0].runs[0]}" in words(page)


def test_same_exercises_give_the_same_bytes() -> None:
    assert printed(count=1) == printed(count=1)
