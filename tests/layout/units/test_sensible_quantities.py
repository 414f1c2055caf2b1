"""Quantities that many parts have: which bounds each has, and that what is usual lies within them."""

import pytest

from plumbnet.layout.units.measure import QuantityError
from plumbnet.layout.units.sensible_quantities import set_pressure, standing_pressure, vessel_volume, water_inside


def test_water_may_stand_at_nothing_and_no_valve_is_set_to_it() -> None:
    assert standing_pressure().read(0, "us") == 0.0
    with pytest.raises(QuantityError, match=r'"0 psi" is too low; at least 0.146 psi is wanted here'):
        set_pressure().read(0, "us")


def test_part_may_hold_nothing_by_the_way_and_no_vessel_does() -> None:
    assert water_inside().read(0, "metric") == 0.0
    with pytest.raises(QuantityError, match=r'"0 L" is too low; at least 0.001 L is wanted here'):
        vessel_volume().read(0, "metric")


def test_pressures_and_vessels_end_somewhere() -> None:
    for quantity in (standing_pressure(), set_pressure()):
        with pytest.raises(QuantityError, match=r"is too high; at most 100 bar is wanted here"):
            quantity.read(101, "metric-bar")
    for quantity in (vessel_volume(), water_inside()):
        with pytest.raises(QuantityError, match=r"is too high; at most 2,640,000 gal is wanted here"):
            quantity.read(3e6, "us")


def test_what_is_usual_is_told_where_it_is_known() -> None:
    assert set_pressure(200e3, 600e3).usual == (200e3, 600e3)
    assert vessel_volume().usual is None
