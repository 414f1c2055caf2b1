"""Between what the street of a heater may stand, as a gauge at the heater reads it."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.units.units import PASCAL_PER_METRE
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.margins.street_band import StreetBand, street_bands

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"


def bands(runs: str, **parts: str) -> tuple[StreetBand, ...]:
    report = plumbnet.check(system(runs, **{"heater": RELIEVED, **parts}))
    return street_bands(report, margins_of(report).numbers)


def test_band_is_the_margin_of_the_street_at_the_height_of_the_heater() -> None:
    (band,) = bands("street -> heater -> tap.hot", heater=f"{RELIEVED}, elevation: 10 ft")
    assert (band.heater, band.margin.number.part) == ("heater", "street")
    assert band.high_pa == pytest.approx(80 * PSI - 3.048 * PASCAL_PER_METRE, abs=100)
    assert band.less_pa == pytest.approx(3.048 * PASCAL_PER_METRE)
    assert band.low_pa < 60 * PSI - band.less_pa < band.high_pa


def test_street_before_a_reducer_stands_at_no_heater_behind_it() -> None:
    assert bands("street -> prv -> heater -> tap.hot") == ()


def test_end_of_what_was_tried_is_the_end_where_nothing_turns() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot", heater=RELIEVED))
    street = margins_of(report).numbers[0]
    assert StreetBand("heater", street, 0.0).high_pa == pytest.approx(80 * PSI, abs=100)
    free = type(street)(street.number)
    assert StreetBand("heater", free, 5.0).high_pa == street.number.highest - 5.0
    assert StreetBand("heater", free, 5.0).low_pa == -5.0
