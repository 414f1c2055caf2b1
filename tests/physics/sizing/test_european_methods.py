from dataclasses import replace

import pytest

from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import saturation_abs_pa
from plumbnet.physics.sizing.duty import Duty
from plumbnet.physics.sizing.european_methods import din_4807_5, en_12828, uk_4_percent

BAR = 1e5
CIRCUIT = Duty(
    volume_m3=2.0, cold_k=283.15, hot_k=353.15, head_pa=1.2 * BAR, relief_abs_pa=4 * BAR, atmosphere_abs_pa=BAR
)
CYLINDER = Duty(
    volume_m3=0.2,
    cold_k=283.15,
    hot_k=333.15,
    static_abs_pa=4 * BAR,
    relief_abs_pa=7 * BAR,
    limit_abs_pa=7 * BAR,
    atmosphere_abs_pa=BAR,
)


def test_a_circuit_is_charged_to_its_column_of_water_and_a_margin() -> None:
    assert en_12828(CIRCUIT).charge_abs_pa == pytest.approx(2.5 * BAR)


def test_a_circuit_above_100_degc_is_charged_against_its_vapour() -> None:
    sized = en_12828(replace(CIRCUIT, hot_k=383.15, relief_abs_pa=6 * BAR))
    assert sized.charge_abs_pa == pytest.approx(2.5 * BAR + saturation_abs_pa(383.15) - BAR)


def test_a_chosen_charge_counts_if_it_is_no_lower_than_the_least() -> None:
    assert en_12828(replace(CIRCUIT, charge_abs_pa=2.8 * BAR)).charge_abs_pa == 2.8 * BAR
    assert en_12828(replace(CIRCUIT, charge_abs_pa=2.0 * BAR)).charge_abs_pa == pytest.approx(2.5 * BAR)


@pytest.mark.parametrize(("relief_bar", "end_bar"), [(3, 2.5), (4, 3.5), (5, 4.5), (6, 5.4), (10, 9)])
def test_a_circuit_ends_half_a_bar_or_a_tenth_below_the_relief_valve(relief_bar: float, end_bar: float) -> None:
    sized = en_12828(replace(CIRCUIT, relief_abs_pa=(relief_bar + 1) * BAR))
    assert sized.end_abs_pa == pytest.approx((end_bar + 1) * BAR)


@pytest.mark.parametrize(("volume_m3", "reserve_m3"), [(0.2, 0.003), (0.6, 0.003), (2.0, 0.01)])
def test_the_reserve_is_half_a_per_cent_and_at_least_3_litres(volume_m3: float, reserve_m3: float) -> None:
    assert en_12828(replace(CIRCUIT, volume_m3=volume_m3)).reserve_m3 == pytest.approx(reserve_m3)


def test_a_vessel_follows_the_formula_of_the_standard() -> None:
    sized = en_12828(CIRCUIT)
    expansion = 2.0 * growth(283.15, 353.15, pressure_abs_pa=2.5 * BAR)
    p_0, p_e = 1.5, 2.5
    vessel = (expansion + 0.01) * (p_e + 1) / (p_e - p_0)
    assert sized.tank_m3 == pytest.approx(vessel)
    assert sized.fill_abs_pa == pytest.approx((vessel * (p_0 + 1) / (vessel - 0.01)) * BAR)


def test_a_larger_vessel_may_be_filled_to_more() -> None:
    sized = en_12828(CIRCUIT)
    vessel, expansion = 0.4, sized.expansion_m3
    found = sized.fill_range(vessel)
    p_0, p_e = 1.5, 2.5
    assert found.lowest_abs_pa == pytest.approx(vessel * (p_0 + 1) / (vessel - 0.01) * BAR)
    assert found.highest_abs_pa == pytest.approx((p_e + 1) / (1 + expansion * (p_e + 1) / (vessel * (p_0 + 1))) * BAR)
    assert found.highest_abs_pa > found.lowest_abs_pa


@pytest.mark.parametrize(("hot_c", "n"), [(60, 0.017), (70, 0.023), (80, 0.029)])
def test_the_growth_of_drinking_water_is_that_of_the_standards_table(hot_c: float, n: float) -> None:
    sized = din_4807_5(replace(CYLINDER, hot_k=hot_c + 273.15))
    assert sized.expansion_m3 == pytest.approx(0.2 * n)
    assert [each.source for each in sized.steps if each.symbol == "e"] == [sized.steps[-1].source]


@pytest.mark.parametrize("change", [{"hot_k": 338.15}, {"cold_k": 281.15}])
def test_the_growth_of_drinking_water_beside_the_table_is_computed(change: dict[str, float]) -> None:
    duty = Duty(
        volume_m3=0.2,
        cold_k=change.get("cold_k", 283.15),
        hot_k=change.get("hot_k", 333.15),
        static_abs_pa=4 * BAR,
        relief_abs_pa=7 * BAR,
    )
    expected = 0.2 * growth(duty.cold_k, duty.hot_k, pressure_abs_pa=4 * BAR)
    assert din_4807_5(duty).expansion_m3 == pytest.approx(expected)


def test_a_growth_that_is_given_comes_before_the_table() -> None:
    assert din_4807_5(replace(CYLINDER, growth=0.02)).expansion_m3 == pytest.approx(0.004)


def test_drinking_water_is_charged_below_the_start_and_ends_below_the_relief_valve() -> None:
    sized = din_4807_5(CYLINDER)
    assert (sized.charge_abs_pa, sized.start_abs_pa, sized.end_abs_pa) == pytest.approx((3.8e5, 4e5, 5.8e5))
    # With gauge pressures in bar: V n (p_a + 1)(p_e + 1)/((p_0 + 1)(p_e - p_a)).
    assert sized.tank_m3 == pytest.approx(0.2 * 0.017 * 4.0 * 5.8 / (3.8 * (4.8 - 3.0)))


def test_four_per_cent_is_allowed_whatever_the_temperature() -> None:
    assert uk_4_percent(CYLINDER).expansion_m3 == pytest.approx(0.008)
    assert uk_4_percent(CYLINDER).notes == ()
    hot = uk_4_percent(replace(CYLINDER, cold_k=277.15, hot_k=373.15))
    assert hot.expansion_m3 == pytest.approx(0.008)
    assert hot.notes == ("the liquid grows by 4.3%, more than the 4 % allowed for",)


def test_end_of_a_circuit_is_told_by_the_rule_of_its_relief_valve() -> None:
    low, high = (
        next(each for each in en_12828(replace(CIRCUIT, relief_abs_pa=relief)).steps if each.symbol == "p_2")
        for relief in (6 * BAR, 7 * BAR)
    )
    assert (low.name, low.formula) == ("end pressure", "p_sv - d_below")
    assert {symbol: each.value for symbol, each in low.numbers.items()} == {"p_sv": 6 * BAR, "d_below": 0.5 * BAR}
    assert (high.name, high.formula) == ("end pressure", "p_atm + 0.9 * (p_sv - p_atm)")


def test_growth_by_the_table_of_the_standard_is_told_as_such() -> None:
    e = next(each for each in din_4807_5(CYLINDER).steps if each.symbol == "e")
    assert (e.name, e.formula) == ("growth of the water, from the table of n", "e")
    assert {symbol: each.value for symbol, each in e.numbers.items()} == {"e": 0.017}


def test_growth_of_just_four_per_cent_is_within_the_allowance() -> None:
    assert uk_4_percent(replace(CYLINDER, growth=0.04)).notes == ()
    assert uk_4_percent(replace(CYLINDER, growth=0.041)).notes != ()
