"""The published flow of liquid that is heated, beside a hand calculation and a balance of volumes."""

import pytest

from plumbnet.physics.fluids.water import ATMOSPHERE_PA, enthalpy_j_kg, specific_volume_m3_kg
from plumbnet.physics.vessels.relief_flow import thermal_expansion_m3_s


def test_flow_is_that_of_the_printed_form_in_its_own_units() -> None:
    """q = av Q/(500 G c), from memory; water of 140 degF: av 2.9e-4 per degF, G 0.984, c 1.0, from tables."""
    found = thermal_expansion_m3_s(333.15, pressure_abs_pa=ATMOSPHERE_PA + 1.034e6, heat_w=100_000 * 0.2930711)
    assert found * 15_850.32 == pytest.approx(2.9e-4 * 100_000 / (500 * 0.984 * 1.0), rel=0.01)


@pytest.mark.parametrize("temperature_k", [290.0, 333.15, 370.0])
def test_flow_is_what_a_balance_of_heat_and_volume_gives(temperature_k: float) -> None:
    ends = (temperature_k - 0.5, temperature_k + 0.5)
    volumes = [specific_volume_m3_kg(each, pressure_abs_pa=1e6) for each in ends]
    heats = [enthalpy_j_kg(each, pressure_abs_pa=1e6) for each in ends]
    grows_m3_j = (volumes[1] - volumes[0]) / (heats[1] - heats[0])
    found = thermal_expansion_m3_s(temperature_k, pressure_abs_pa=1e6, heat_w=11_723.0)
    assert found == pytest.approx(grows_m3_j * 11_723.0, rel=1e-4)
