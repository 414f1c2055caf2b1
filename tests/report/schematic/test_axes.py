import subprocess
import sys

from drawing_board import sketch
from matplotlib.figure import Figure

import plumbnet
from plumbnet.drawing.ink.pen import Group
from plumbnet.report.schematic.axes import draw

RUNS = "street -> cv -> heater -> tap.hot"


def drawn_in(axes: object) -> set[str | None]:
    return {each.get_gid() for each in axes.get_children() if isinstance(each, Group)}  # type: ignore[attr-defined]  # axes


def test_system_is_drawn_in_a_figure_of_its_own() -> None:
    axes = draw(sketch(RUNS).report)
    assert {"part-street", "part-cv", "part-heater", "part-tap", "zone-1"} <= drawn_in(axes)


def test_system_is_drawn_into_given_axes() -> None:
    axes = Figure((6, 4)).add_subplot()
    assert draw(sketch(RUNS).report, axes) is axes
    assert "part-heater" in drawn_in(axes)


def test_report_that_is_given_is_the_one_that_is_drawn() -> None:
    closed, opened = sketch(RUNS), sketch("street -> valve -> heater -> tap.hot")
    assert "zone-1" not in drawn_in(plumbnet.draw(closed.system, opened.report))


def test_drawing_is_offered_by_the_package_and_imported_only_when_it_is_used() -> None:
    assert "part-heater" in drawn_in(plumbnet.draw(sketch(RUNS).system))
    script = "import sys, plumbnet; assert plumbnet.draw; sys.exit('matplotlib' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0  # noqa: S603  # this file's text
