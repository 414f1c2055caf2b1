"""A column shows the water as it stands and as far as it climbs."""

import numpy as np
import pytest
from conftest import system
from matplotlib.patches import Rectangle

import plumbnet
from plumbnet.report.charts.ladders import ladder_chart
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.margins.street_band import street_bands

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def tubes(runs: str, **parts: str) -> list[tuple[float, float]]:
    """From where to where the tube of the first heater is filled, the empty tube last."""
    axes = ladder_chart(plumbnet.check(system(runs, **parts)))
    boxes = [each for each in axes.patches if isinstance(each, Rectangle)]
    found = [(box.get_y(), box.get_y() + box.get_height()) for box in boxes]
    return [*found[1:], found[0]]


def test_trapped_water_climbs_to_the_relief_valve() -> None:
    standing, rising, _ = tubes(HOUSE, heater="relief: {pressure: 150 psi}")
    assert standing == pytest.approx((0.0, 60.0))
    assert rising == pytest.approx((60.0, 150.0))


def test_sealed_water_climbs_to_what_heaters_are_tested_to() -> None:
    assert tubes(HOUSE)[1] == pytest.approx((60.0, 300.0), abs=0.01)


def test_held_water_climbs_to_where_it_settles() -> None:
    low, high = tubes(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal")[1]
    assert low == pytest.approx(60.0)
    assert 60.0 < high < 80.0


def test_open_water_does_not_climb() -> None:
    assert len(tubes("street -> tee -> heater -> tap.hot")) == 2


def test_band_of_the_street_is_a_line_beside_the_tube() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot", heater="relief: {pressure: 150 psi}"))
    bands = street_bands(report, margins_of(report).numbers)
    with_band, without = (ladder_chart(report, bands=shown).lines for shown in (bands, ()))
    added = [line for line in with_band if line.get_linewidth() == pytest.approx(1.6)]
    assert len(with_band) == len(without) + 1
    (line,) = added
    assert np.asarray(line.get_ydata(), dtype=float).tolist() == pytest.approx([0.25, 80.0], abs=0.1)
    assert np.asarray(line.get_xdata(), dtype=float).max() < 0.035
