"""Water pushed back into a supply pipe: its mean temperature, and what becomes of the pipe."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import specific_volume_m3_kg
from plumbnet.physics.vessels.supply_pipe import leaving_k, mixed_k

P = 450e3


def numeric_mean_k(cold_k: float, hot_k: float) -> float:
    """The same mean by integrating T dm by parts with an adaptive rule: T m at the ends, less the integral of m dT."""

    def density(temperature_k: float) -> float:
        return 1.0 / specific_volume_m3_kg(temperature_k, pressure_abs_pa=P)

    area, _ = quad(density, cold_k, hot_k, epsabs=1e-9, epsrel=1e-12)
    moment = cold_k * density(cold_k) - hot_k * density(hot_k) + area
    return float(moment / (density(cold_k) - density(hot_k)))


@pytest.mark.parametrize(("cold_k", "hot_k"), [(283.15, 333.15), (283.15, 363.15), (293.15, 313.15), (278.15, 353.15)])
def test_mean_is_that_of_an_adaptive_integration(cold_k: float, hot_k: float) -> None:
    assert leaving_k(cold_k, hot_k, pressure_abs_pa=P) == pytest.approx(numeric_mean_k(cold_k, hot_k), abs=0.02)


@given(cold=st.floats(278.0, 300.0), rise=st.floats(1.0, 70.0))
def test_water_leaves_warmer_than_half_way_since_warm_water_grows_faster(cold: float, rise: float) -> None:
    mean_k = leaving_k(cold, cold + rise, pressure_abs_pa=P)
    assert cold + rise / 2.0 - 0.01 <= mean_k < cold + rise


def test_store_that_is_not_heated_gives_off_nothing_and_nothing_is_warmer() -> None:
    assert leaving_k(300.0, 300.0, pressure_abs_pa=P) == 300.0
    assert leaving_k(275.15, 276.15, pressure_abs_pa=P) == 275.15  # shrinks


def test_pipe_that_does_not_hold_the_growth_has_no_temperature() -> None:
    assert mixed_k(3.6, 3.5, leaves_k=314.0, cold_k=283.0) is None
    assert mixed_k(3.5, 3.5, leaves_k=314.0, cold_k=283.0) == pytest.approx(314.0)
    assert mixed_k(0.0, 0.0, leaves_k=314.0, cold_k=283.0) == 283.0


def test_cylinder_of_120_litres_wants_a_pipe_of_twice_its_growth_to_stay_at_25_degrees() -> None:
    grown = 120.0 * growth(283.15, 333.15, pressure_abs_pa=P)
    leaves = leaving_k(283.15, 333.15, pressure_abs_pa=P)
    least = grown * (leaves - 283.15) / 15.0
    assert grown == pytest.approx(2.01, abs=0.01)  # 1.68 per cent
    assert least / grown == pytest.approx(2.06, abs=0.05)
    assert mixed_k(grown, least, leaves_k=leaves, cold_k=283.15) == pytest.approx(298.15)
