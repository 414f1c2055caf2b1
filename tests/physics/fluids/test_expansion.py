import math

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.fluids.expansion import counted_from_k, growth
from plumbnet.physics.fluids.water import ATMOSPHERE_PA, OutsideWater, densest_k

PRESSURE_PA = 6e5
temperatures = st.floats(273.15, 470.0)


@pytest.mark.parametrize("cold_c", [5, 10, 15, 20, 40])
@pytest.mark.parametrize("hot_c", [50, 60, 80, 95, 120, 150])
def test_growth_agrees_with_an_independent_equation_of_state(cold_c: float, hot_c: float) -> None:
    cold, hot = (PropsSI("D", "T", t + 273.15, "P", PRESSURE_PA, "Water") for t in (cold_c, hot_c))
    found = growth(cold_c + 273.15, hot_c + 273.15, pressure_abs_pa=PRESSURE_PA)
    assert found == pytest.approx(cold / hot - 1, abs=2e-5)


def test_fill_colder_than_the_density_maximum_counts_from_it() -> None:
    densest = densest_k(ATMOSPHERE_PA)
    from_ice = growth(273.15, 333.15, pressure_abs_pa=ATMOSPHERE_PA)
    assert from_ice == growth(densest, 333.15, pressure_abs_pa=ATMOSPHERE_PA)
    assert from_ice > growth(283.15, 333.15, pressure_abs_pa=ATMOSPHERE_PA)


def test_water_warmed_up_to_the_density_maximum_does_not_grow() -> None:
    assert growth(273.15, densest_k(ATMOSPHERE_PA), pressure_abs_pa=ATMOSPHERE_PA) == 0.0
    assert growth(274.15, 275.15, pressure_abs_pa=ATMOSPHERE_PA) == 0.0


def test_water_that_is_not_warmed_does_not_grow() -> None:
    assert growth(333.15, 333.15, pressure_abs_pa=PRESSURE_PA) == 0.0
    assert growth(333.15, 283.15, pressure_abs_pa=PRESSURE_PA) == 0.0


@pytest.mark.parametrize(("cold_k", "hot_k"), [(200.0, 333.15), (283.15, 700.0), (math.nan, 333.15)])
def test_growth_outside_the_formulation_is_refused(cold_k: float, hot_k: float) -> None:
    with pytest.raises(OutsideWater):
        growth(cold_k, hot_k, pressure_abs_pa=PRESSURE_PA)


@given(cold_k=temperatures, warm_k=temperatures, hot_k=temperatures)
def test_water_grows_the_more_the_hotter_it_gets(cold_k: float, warm_k: float, hot_k: float) -> None:
    warm_k, hot_k = sorted((warm_k, hot_k))
    warm, hot = (growth(cold_k, t, pressure_abs_pa=2e6) for t in (warm_k, hot_k))
    assert 0.0 <= warm <= hot + 1e-15


def test_fifty_gallons_from_50_to_140_degf_give_off_more_than_three_quarts() -> None:
    found = 50.0 * growth(283.15, 333.15, pressure_abs_pa=ATMOSPHERE_PA)
    assert found == pytest.approx(0.839, abs=0.001)


@pytest.mark.parametrize("cold_k", [273.15, 275.0, 277.0])
def test_a_fill_colder_than_the_densest_counts_from_there(cold_k: float) -> None:
    assert counted_from_k(cold_k, pressure_abs_pa=ATMOSPHERE_PA) == densest_k(ATMOSPHERE_PA)


@pytest.mark.parametrize("cold_k", [277.2, 283.15, 333.15])
def test_a_warmer_fill_counts_from_itself(cold_k: float) -> None:
    assert counted_from_k(cold_k, pressure_abs_pa=ATMOSPHERE_PA) == cold_k
