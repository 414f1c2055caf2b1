from drawing_board import sketch
from matplotlib.figure import Figure

from plumbnet.report.drawing.axes import draw
from plumbnet.report.drawing.ink import Group

RUNS = "street -> cv -> heater -> tap.hot"


def drawn_in(axes: object) -> set[str | None]:
    return {each.get_gid() for each in axes.get_children() if isinstance(each, Group)}  # type: ignore[attr-defined]  # axes


def test_system_is_drawn_in_a_figure_of_its_own() -> None:
    axes = draw(sketch(RUNS).system)
    assert {"part-street", "part-cv", "part-heater", "part-tap", "zone-1"} <= drawn_in(axes)


def test_system_is_drawn_into_given_axes() -> None:
    axes = Figure((6, 4)).add_subplot()
    assert draw(sketch(RUNS).system, ax=axes) is axes
    assert "part-heater" in drawn_in(axes)


def test_report_that_is_given_is_the_one_that_is_drawn() -> None:
    closed, opened = sketch(RUNS), sketch("street -> valve -> heater -> tap.hot")
    assert "zone-1" not in drawn_in(draw(closed.system, opened.report))
