import math

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.fluids.water import (
    ATMOSPHERE_PA,
    OutsideWater,
    boiling_k,
    compressibility_per_pa,
    densest_k,
    enthalpy_j_kg,
    expansivity_per_k,
    heat_capacity_j_kg_k,
    saturation_abs_pa,
    saturation_source,
    source,
    specific_volume_m3_kg,
)

PROPERTIES = {
    each.__name__: each
    for each in (specific_volume_m3_kg, enthalpy_j_kg, heat_capacity_j_kg_k, expansivity_per_k, compressibility_per_pa)
}
BELOW_BOILING_C = [0.01, 4, 10, 25, 50, 75, 100, 125, 150]
PRESSURES_PA = [6e5, 1e6, 2e6]
temperatures = st.floats(273.15, 420.0)
pressures = st.floats(5e5, 2e6)


def independent(quantity: str, temperature_k: float, pressure_abs_pa: float) -> float:
    """A property by IAPWS-95, an equation of state that shares nothing with IF97."""
    return float(PropsSI(quantity, "T", temperature_k, "P", pressure_abs_pa, "Water"))


def kell_density_kg_m3(t: float) -> float:
    """Kell (1975), 1 atm, 0 to 150 degC."""
    above = 999.83952 + 16.945176 * t - 7.9870401e-3 * t**2 - 46.170461e-6 * t**3
    return (above + 105.56302e-9 * t**4 - 280.54253e-12 * t**5) / (1 + 16.879850e-3 * t)


def kell_compressibility_per_pa(t: float) -> float:
    """Kell (1975), 1 atm, 0 to 100 degC."""
    above = 50.88496 + 0.6163813 * t + 1.459187e-3 * t**2 + 20.08438e-6 * t**3
    return 1e-11 * (above - 58.47727e-9 * t**4 + 410.4110e-12 * t**5) / (1 + 19.67348e-3 * t)


def test_water_is_densest_near_4_degc() -> None:
    assert densest_k(ATMOSPHERE_PA) - 273.15 == pytest.approx(3.98, abs=0.025)


def test_volume_at_the_density_maximum_is_the_smallest() -> None:
    densest = densest_k(ATMOSPHERE_PA)
    smallest = specific_volume_m3_kg(densest, pressure_abs_pa=ATMOSPHERE_PA)
    for beside in (densest - 0.5, densest + 0.5):
        assert specific_volume_m3_kg(beside, pressure_abs_pa=ATMOSPHERE_PA) > smallest


def test_density_maximum_lies_colder_under_pressure_and_ends_at_freezing() -> None:
    assert densest_k(5e6) < densest_k(1e6) < densest_k(ATMOSPHERE_PA) < densest_k(0.0)
    assert densest_k(2.5e7) == 273.15


def test_density_maximum_is_refused_outside_the_formulation() -> None:
    with pytest.raises(OutsideWater, match=r"^-5 Pa absolute is outside 0 to 100 MPa$"):
        densest_k(-5.0)


@pytest.mark.parametrize("temperature_c", range(0, 100, 5))
def test_density_follows_kells_equation(temperature_c: int) -> None:
    volume = specific_volume_m3_kg(temperature_c + 273.15, pressure_abs_pa=ATMOSPHERE_PA)
    assert 1 / volume == pytest.approx(kell_density_kg_m3(temperature_c), rel=1.5e-5)


def test_kells_equation_is_written_down_with_the_right_coefficients() -> None:
    assert kell_density_kg_m3(25) == pytest.approx(997.0448954179155, rel=1e-12)
    assert kell_density_kg_m3(50) == pytest.approx(988.0362916114763, rel=1e-12)


@pytest.mark.parametrize("temperature_c", range(0, 100, 5))
def test_compressibility_follows_kells_equation(temperature_c: int) -> None:
    found = compressibility_per_pa(temperature_c + 273.15, pressure_abs_pa=ATMOSPHERE_PA)
    assert found == pytest.approx(kell_compressibility_per_pa(temperature_c), rel=4e-3)


@pytest.mark.parametrize("pressure_abs_pa", PRESSURES_PA)
@pytest.mark.parametrize("temperature_c", BELOW_BOILING_C)
def test_properties_agree_with_an_independent_equation_of_state(temperature_c: float, pressure_abs_pa: float) -> None:
    state = temperature_c + 273.15, pressure_abs_pa
    volume = specific_volume_m3_kg(state[0], pressure_abs_pa=pressure_abs_pa)
    assert 1 / volume == pytest.approx(independent("D", *state), rel=2e-5)
    heat = heat_capacity_j_kg_k(state[0], pressure_abs_pa=pressure_abs_pa)
    assert heat == pytest.approx(independent("C", *state), rel=1e-3)
    enthalpy = enthalpy_j_kg(state[0], pressure_abs_pa=pressure_abs_pa)
    assert enthalpy == pytest.approx(independent("H", *state), abs=100)
    beta = expansivity_per_k(state[0], pressure_abs_pa=pressure_abs_pa)
    assert beta == pytest.approx(independent("ISOBARIC_EXPANSION_COEFFICIENT", *state), abs=6e-7)
    kappa = compressibility_per_pa(state[0], pressure_abs_pa=pressure_abs_pa)
    assert kappa == pytest.approx(independent("ISOTHERMAL_COMPRESSIBILITY", *state), rel=4e-3)


@pytest.mark.parametrize("temperature_c", BELOW_BOILING_C)
def test_saturation_agrees_with_an_independent_equation_of_state(temperature_c: float) -> None:
    found = saturation_abs_pa(temperature_c + 273.15)
    expected = PropsSI("P", "T", temperature_c + 273.15, "Q", 0, "Water")
    assert found == pytest.approx(expected, rel=2e-4)


@given(temperature_k=st.floats(273.16, 623.0))
def test_water_boils_at_its_saturation_pressure(temperature_k: float) -> None:
    assert boiling_k(saturation_abs_pa(temperature_k)) == pytest.approx(temperature_k, abs=1e-6)


@pytest.mark.parametrize("pressure_abs_pa", [0.0, 600.0, 1.7e7, math.nan])
def test_boiling_outside_the_formulation_is_refused(pressure_abs_pa: float) -> None:
    with pytest.raises(OutsideWater) as refused:
        boiling_k(pressure_abs_pa)
    assert str(refused.value) == f"{pressure_abs_pa:g} Pa absolute boils no water of 273.15 K to 623.15 K"


def test_water_below_saturation_pressure_counts_as_saturated_liquid() -> None:
    saturated = specific_volume_m3_kg(400.0, pressure_abs_pa=saturation_abs_pa(400.0))
    assert specific_volume_m3_kg(400.0, pressure_abs_pa=ATMOSPHERE_PA) == saturated
    assert specific_volume_m3_kg(400.0, pressure_abs_pa=0.0) == saturated


@pytest.mark.parametrize(
    ("temperature_k", "pressure_abs_pa", "text"),
    [
        (273.0, 1e5, "273 K is outside 273.15 K to 623.15 K"),
        (700.0, 1e5, "700 K is outside 273.15 K to 623.15 K"),
        (math.nan, 1e5, "nan K is outside 273.15 K to 623.15 K"),
        (300.0, -1.0, "-1 Pa absolute is outside 0 to 100 MPa"),
        (300.0, 1.5e8, "1.5e+08 Pa absolute is outside 0 to 100 MPa"),
        (300.0, math.nan, "nan Pa absolute is outside 0 to 100 MPa"),
    ],
)
def test_states_outside_the_formulation_are_refused(temperature_k: float, pressure_abs_pa: float, text: str) -> None:
    with pytest.raises(OutsideWater) as refused:
        specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure_abs_pa)
    assert str(refused.value) == text


@pytest.mark.parametrize("temperature_k", [273.15, 623.15])
def test_ends_of_the_boiling_curve_lie_on_it(temperature_k: float) -> None:
    assert boiling_k(saturation_abs_pa(temperature_k)) == pytest.approx(temperature_k, abs=1e-6)


IF97 = "IAPWS R7-97(2012), equation"


@pytest.mark.parametrize("name", PROPERTIES)
@pytest.mark.parametrize(
    ("inside", "beyond"), [((453.15, 2e6), (453.15 + 1e-9, 2e6)), ((300.0, 3e6), (300.0, 3e6 + 1e-3))]
)
def test_nothing_jumps_where_the_table_ends(
    name: str, inside: tuple[float, float], beyond: tuple[float, float]
) -> None:
    known, further = (PROPERTIES[name](t, pressure_abs_pa=p) for t, p in (inside, beyond))
    assert further == pytest.approx(known, rel=1e-10)


@pytest.mark.parametrize(
    ("temperature_k", "pressure_abs_pa", "said"),
    [
        (453.15, 3e6, f"interpolated from {IF97} 7, to 1e-8"),
        (453.15, 0.0, f"interpolated from {IF97} 7, to 1e-8"),
        (453.16, 3e6, f"{IF97} 7"),
        (300.0, 3.01e6, f"{IF97} 7"),
    ],
)
def test_volume_says_whether_it_is_interpolated(temperature_k: float, pressure_abs_pa: float, said: str) -> None:
    assert source(temperature_k, pressure_abs_pa=pressure_abs_pa) == said


def test_saturation_says_whether_it_is_interpolated() -> None:
    assert saturation_source(453.15) == f"interpolated from {IF97} 30, to 1e-8"
    assert saturation_source(453.16) == f"{IF97} 30"


def test_saturation_and_boiling_do_not_jump_where_the_table_ends() -> None:
    assert saturation_abs_pa(453.15 + 1e-9) == pytest.approx(saturation_abs_pa(453.15), rel=1e-10)
    for end_abs_pa in (611.3, 3.0e6):
        assert boiling_k(end_abs_pa * (1 - 1e-9)) == pytest.approx(boiling_k(end_abs_pa * (1 + 1e-9)), rel=1e-9)


def test_density_maximum_does_not_jump_where_the_table_ends() -> None:
    for end_abs_pa in (1.0e3, 3.0e6):
        assert densest_k(end_abs_pa - 0.1) == pytest.approx(densest_k(end_abs_pa + 0.1), abs=1e-6)
