"""Texts of charts are measured as they are drawn, and broken where they must be."""

import pytest
from conftest import system
from hypothesis import given
from hypothesis import strategies as st
from matplotlib import rcParams
from matplotlib.figure import Figure

import plumbnet
from plumbnet.report.charts.chart_paper import (
    LINESPACING,
    POINTS,
    TextMeasure,
    axes_of,
    extent_in,
    figure_of,
    heading,
    style,
)
from plumbnet.report.charts.pens import PENS


@pytest.mark.parametrize("words", ["limit 80 psi (fixture tap)", "WWWW", "iiii", "a\nb\nc"])
def test_texts_are_as_large_as_they_are_measured(words: str) -> None:
    with style():
        figure = Figure(figsize=(4.0, 4.0), dpi=100.0)
        text = figure.text(0.1, 0.5, words, fontsize=POINTS, linespacing=LINESPACING)
        box = text.get_window_extent()
        width_in = max(TextMeasure().width_in(line) for line in words.split("\n"))
    assert box.width / 100.0 == pytest.approx(width_in, abs=0.04)
    assert box.height / 100.0 <= TextMeasure().height_in(words) + 0.01


@given(st.text("ab -W", max_size=80), st.floats(0.2, 3.0))
def test_no_line_is_wider_than_it_may_be_and_no_letter_is_lost(words: str, width_in: float) -> None:
    lines = TextMeasure().wrapped(words, width_in).split("\n")
    assert all(len(line) <= 1 or TextMeasure().width_in(line) <= width_in for line in lines)
    assert "".join(lines).replace(" ", "") == words.replace(" ", "")


def test_what_does_not_print_is_made_visible() -> None:
    assert TextMeasure().wrapped("a\x1b\u202eb", 3.0) == "a\\x1b\\u202eb"


def test_text_of_too_many_lines_ends_in_three_dots_within_its_width() -> None:
    text = TextMeasure().first_lines("one two three four five six seven", 0.5, most=2)
    assert text.count("\n") == 1
    assert text.endswith("...")
    assert max(TextMeasure().width_in(line) for line in text.split("\n")) <= 0.5


def test_settings_of_the_reader_come_back() -> None:
    rcParams["font.size"] = 17.0
    try:
        with style():
            assert rcParams["font.size"] == POINTS
        assert rcParams["font.size"] == 17.0
    finally:
        rcParams["font.size"] = 10.0


def test_axes_leave_their_margins() -> None:
    axes = axes_of((6.0, 4.0), (1.0, 0.5, 0.5, 0.5), PENS["light"])
    assert extent_in(axes) == pytest.approx((4.5, 3.0))
    assert figure_of(axes).get_size_inches().tolist() == [6.0, 4.0]


def test_axes_of_a_part_of_a_figure_know_the_whole() -> None:
    figure = Figure()
    axes = figure.add_subfigure(figure.add_gridspec(1, 2)[0]).add_subplot()
    assert figure_of(axes) is figure


def test_heading_names_the_building_where_it_has_a_title() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot"))
    axes = axes_of((6.0, 4.0), (1.0, 0.5, 0.5, 0.5), PENS["light"])
    heading(axes, report, "what opens")
    assert axes.get_title() == "What opens"
