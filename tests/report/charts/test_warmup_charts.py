"""The warm-up chart: as it is and cured on one sheet, each event with its letter and its words."""

from functools import cache
from pathlib import Path

import pytest
from conftest import system
from matplotlib.axes import Axes
from overlap import off_the_sheet, overlapping, places, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.warmup.heater_warmup import NoWarmUp
from plumbnet.report.charts.chart_paper import figure_of
from plumbnet.report.charts.warmup_charts import warmup_chart
from plumbnet.study.dossier.warm_ups import WarmUps, warm_ups, warm_ups_with_tank
from plumbnet.study.remedies.proposal import with_remedy

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}"}
SOME = ("bakery-tank-too-small", "dual-check-meter", "school-shared-tanks", "two-heaters-own-checks")
SYSTEMS = Path(__file__).parents[3] / "systems"


@cache
def trapped() -> Report:
    return plumbnet.check(system(HOUSE, **RELIEVED))


@cache
def trapped_warming() -> WarmUps:
    return warm_ups_with_tank(trapped(), "heater")


def chart(report: Report, *, heater: str = "heater") -> Axes:
    return warmup_chart(warm_ups_with_tank(report, heater))


@pytest.mark.parametrize("name", SOME)
def test_no_words_lie_over_others_or_off_the_sheet(name: str) -> None:
    report = plumbnet.check(plumbnet.read(SYSTEMS / f"{name}.yaml"))
    axes = chart(report, heater=report.heaters[-1].name)
    assert overlapping(axes) == []
    assert off_the_sheet(axes) == []


def test_trapped_heater_is_shown_as_it_is_and_cured() -> None:
    axes = warmup_chart(trapped_warming())
    words = "\n".join(written(axes))
    assert "as it is" in words
    assert "cured: Fit an" in words.replace("\n", " ")
    assert "1  " in words
    assert "a  0 min: heater-tank takes its first water" in words
    solid, rigid, dashed = axes.get_lines()[:3]
    assert [each.get_linestyle() for each in (solid, rigid, dashed)] == ["-", "-.", "--"]
    assert max(up for _, up in places(dashed)) < 80.0 < max(up for _, up in places(solid))


def test_both_ends_of_the_bracket_are_drawn_with_their_names_and_their_letters() -> None:
    axes = warmup_chart(trapped_warming())
    words = "\n".join(written(axes)).replace("\n", " ")
    assert "as it is, typical walls" in words
    assert "as it is, rigid walls" in words
    assert "1  4.55 min: the pressure" in words
    assert "A  0.985 min: the pressure" in words
    assert words.count("passes the limit") == 2


def test_walls_are_not_named_where_they_change_nothing() -> None:
    tanked = system(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal", **RELIEVED)
    words = "\n".join(written(chart(plumbnet.check(tanked)))).replace("\n", " ")
    assert "as it is" in words
    assert "walls" not in words


def test_open_heater_is_shown_as_it_is_only() -> None:
    axes = chart(plumbnet.check(system("street -> tee -> heater -> tap.hot", **RELIEVED)))
    assert "cured" not in "\n".join(written(axes))


def test_a_proposal_of_the_reader_s_is_taken() -> None:
    report = trapped()
    own = with_remedy(report, plumbnet.remedies(report)["heater"][-1])
    words = " ".join(written(warmup_chart(warm_ups(report, "heater", own)))).replace("\n", " ")
    assert own.remedy.title in words


def test_temperature_stands_over_pressure_on_one_scale_of_time() -> None:
    axes = warmup_chart(trapped_warming())
    above = next(each for each in figure_of(axes).axes if each is not axes)
    assert above.get_xlim() == axes.get_xlim()
    assert above.get_position().y0 > axes.get_position().y1
    assert (axes.get_ylabel(), above.get_ylabel()) == ("pressure, psi", "water, degF")


def test_heater_that_stays_cold_has_no_chart() -> None:
    report = plumbnet.check(system("street -> cv -> tankless -> tap.hot"))
    with pytest.raises(NoWarmUp, match="fires only while water moves"):
        chart(report, heater="tankless")
