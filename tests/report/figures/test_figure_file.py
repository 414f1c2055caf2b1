import xml.etree.ElementTree as ET
from io import BytesIO

import pytest
from matplotlib.figure import Figure
from pypdf import PdfReader

from plumbnet.report.figures.figure_file import FORMS, Form, bound, saved, settled

HOSTILE = 'a$b$ <script>&"\x1b[2J'


def lettered(words: str) -> Figure:
    with settled():
        figure = Figure((3, 2))
        figure.text(0.1, 0.5, words)
    return figure


@pytest.mark.parametrize(("form", "start"), [("svg", b"<?xml"), ("pdf", b"%PDF"), ("png", b"\x89PNG")])
def test_each_form_is_what_it_says(form: Form, start: bytes) -> None:
    assert saved(lettered("water"), form, title="t").startswith(start)


def test_text_of_an_svg_stays_text_and_starts_no_formula() -> None:
    svg = saved(lettered(HOSTILE), "svg", title=HOSTILE).decode()
    texts = [element.text for element in ET.fromstring(svg).iter("{http://www.w3.org/2000/svg}text")]  # noqa: S314  # our own
    assert texts == ['a$b$ <script>&"\\x1b[2J']
    assert "<script>" not in svg
    assert "\x1b" not in svg


def test_an_unfinished_formula_does_not_stop_the_picture() -> None:
    for form in FORMS:
        assert saved(lettered("$\\frac{"), form, title="$\\frac{")


def test_lines_of_a_text_stay_lines() -> None:
    svg = saved(lettered("first\nsecond"), "svg", title="t").decode()
    assert "first" in svg
    assert "second" in svg
    assert "\\n" not in svg


def test_title_stands_in_the_file_and_no_date_does() -> None:
    svg = saved(lettered("x"), "svg", title="Bakery & Sons").decode()
    assert "Bakery &amp; Sons" in svg
    pdf = saved(lettered("x"), "pdf", title="Bakery")
    assert b"/Title" in pdf
    for content in (svg.encode(), pdf):
        assert b"Date" not in content
        assert b"matplotlib.org" not in content or b"DOCTYPE" in content


def test_figures_bound_together_are_pages_of_one_document_that_share_their_fonts() -> None:
    figures = [Figure(figsize=(2.0, 1.0)) for _ in range(3)]
    for number, figure in enumerate(figures):
        figure.text(0.1, 0.5, f"page $x_{number}$ \x1b")
    one = bound(figures[:1], title="t")
    three = bound(figures, title="t")
    assert three == bound(figures, title="t")
    words = [sheet.extract_text() for sheet in PdfReader(BytesIO(three)).pages]
    assert [text.strip() for text in words] == [f"page $x_{number}$ \\x1b" for number in range(3)]
    assert len(three) < 2 * len(one)
