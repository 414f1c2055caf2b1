"""Scales of charts count in the units of the report."""

import pytest
from conftest import PSI

from plumbnet.layout.units.units import PRESSURE, TEMPERATURE
from plumbnet.report.charts.chart_scale import scaled, unit


def test_pressure_counts_in_psi_or_kpa() -> None:
    assert scaled(60.0 * PSI, PRESSURE, "us") == pytest.approx(60.0)
    assert scaled(60_000.0, PRESSURE, "metric") == pytest.approx(60.0)


def test_temperature_counts_from_the_zero_of_its_scale() -> None:
    assert scaled(273.15, TEMPERATURE, "us") == pytest.approx(32.0)
    assert unit(TEMPERATURE, "metric") == "degC"
