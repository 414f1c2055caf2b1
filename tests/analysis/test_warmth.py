"""Between what a heat source warms its water, and what that grows by."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.warmth import Unanswerable, cold_k, grows_m3, heated_abs_pa
from plumbnet.physics.water import ATMOSPHERE_PA

METRE_PA = 9806.65
F50 = 283.15


def test_pressure_at_a_heater_is_that_at_its_height() -> None:
    layout = drawn("street -> cv -> heater -> tap.hot", heater="elevation: 10 m")
    (heated,) = layout.network.heated
    assert heated_abs_pa(layout.network, heated) == pytest.approx(60 * PSI - 10 * METRE_PA + ATMOSPHERE_PA)
    assert grows_m3(layout.network, heated, 2.0) == pytest.approx(2.0 * grows_m3(layout.network, heated, 1.0))


def test_water_that_no_supply_reaches_is_taken_as_just_full_and_cold() -> None:
    layout = drawn("tee -> heater -> tap.hot", tap="elevation: 10 m")
    zone = layout.zone("heater")
    assert layout.network.start_pa(zone) == pytest.approx(10 * METRE_PA)
    assert cold_k(layout.network, zone) == pytest.approx(F50, abs=5.0)


def test_heater_of_which_nothing_can_be_computed_is_named() -> None:
    error = Unanswerable("boiler", "its mixture is not known")
    assert (error.heater, str(error)) == ("boiler", "its mixture is not known")
