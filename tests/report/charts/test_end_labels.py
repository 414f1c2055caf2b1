"""Words at the ends of lines stand beside them and never over one another."""

from overlap import overlapping, written

from plumbnet.report.charts.chart_paper import axes_of, style
from plumbnet.report.charts.end_labels import label_ends
from plumbnet.report.charts.pens import PENS


def test_words_of_lines_that_end_together_are_parted() -> None:
    with style():
        axes = axes_of((6.0, 3.0), (0.5, 0.5, 2.0, 0.5), PENS["light"])
        axes.set_ylim(0.0, 10.0)
        words = [f"line {number} with some words behind it" for number in range(5)]
        label_ends(axes, [(5.0, text) for text in words], PENS["light"], room_in=1.9)
    assert overlapping(axes) == []
    assert {text.replace("\n", " ") for text in written(axes)} >= set(words)


def test_lines_that_leave_the_axes_are_named_at_their_edge() -> None:
    with style():
        axes = axes_of((6.0, 3.0), (0.5, 0.5, 2.0, 0.5), PENS["light"])
        axes.set_ylim(0.0, 10.0)
        label_ends(axes, [(99.0, "high"), (-99.0, "low")], PENS["light"], room_in=1.9)
    places = {text.get_text(): text.get_position()[1] for text in axes.texts}
    assert 0.0 < places["low"] < 0.1
    assert 0.9 < places["high"] < 1.0
