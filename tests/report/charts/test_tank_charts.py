"""The tank chart: sizes against pressure, a line for each charge, the one to fit marked."""

from pathlib import Path

import pytest
from conftest import system
from matplotlib.axes import Axes
from overlap import off_the_sheet, overlapping, places, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.charts.tank_charts import tank_chart
from plumbnet.study.dossier.tank_curves import NoChart, sizes

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))


def chart(report: Report, *, heater: str = "heater") -> Axes:
    return tank_chart(report, heater, sizes(report, heater))


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_no_words_lie_over_others_or_off_the_sheet(path: Path) -> None:
    report = plumbnet.check(plumbnet.read(path))
    for heater in report.heaters:
        try:
            axes = chart(report, heater=heater.name)
        except NoChart:
            continue
        assert overlapping(axes) == []
        assert off_the_sheet(axes) == []


def test_the_tank_to_fit_is_marked_at_its_highest_pressure() -> None:
    report = plumbnet.check(system(HOUSE))
    axes = chart(report)
    found = sizes(report, "heater")
    points = {(round(x, 3), round(y, 3)) for line in axes.get_lines() for x, y in places(line)}
    assert (80.0, round(found.least_m3 / 0.003785411784, 3)) in points
    assert (80.0, 5.0) in points
    assert [text for text in written(axes) if text.startswith("fit")] == ["fit 5 gal,\nat least 3.97 gal\nup to 80 psi"]


def test_each_charge_has_its_line_with_its_words() -> None:
    words = written(chart(plumbnet.check(system(HOUSE))))
    for charge in (40, 50, 60, 70):
        assert f"charged to {charge} psi" in words


def test_no_charge_is_below_that_of_the_air() -> None:
    words = written(chart(plumbnet.check(system(HOUSE, street="pressure: 15 psi"))))
    assert [text for text in words if text.startswith("charged")] == [
        "charged to 15 psi",
        "charged to 5 psi",
        "charged to 25 psi",
    ]


def test_metric_reports_have_metric_scales() -> None:
    axes = chart(plumbnet.check(system(HOUSE), units="metric"))
    assert axes.get_xlabel() == "highest pressure at the tank, kPa"
    assert axes.get_ylabel() == "smallest tank, L; across, the sizes to be had"
