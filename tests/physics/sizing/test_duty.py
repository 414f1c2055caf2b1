import pytest

from plumbnet.physics.sizing.duty import INPUTS, Duty, FillRange, MissingInput, OutsideMethod, Sizing, StepNumber, step
from plumbnet.physics.sizing.methods import METHODS
from plumbnet.physics.vessels.tank import NoTank

BARE = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15)


def test_a_symbol_says_by_its_first_letter_what_it_measures() -> None:
    found = step("V_e", "", "", 1.0, "", V=1.0, v_1=2.0, p_0=3.0, d_head=4.0, T_1=5.0, F=6.0, e_net=7.0, a=8.0)
    assert found.dimension == "volume"
    assert [number.dimension for number in found.numbers.values()] == [
        "volume",
        "specific volume",
        "pressure",
        "pressure difference",
        "temperature",
        "degrees Fahrenheit",
        "ratio",
        "per kelvin",
    ]
    assert found.numbers["p_0"] == StepNumber(3.0, "pressure")


def test_step_keeps_what_it_is_told() -> None:
    found = step("V_e", "expansion", "V * e", 0.004, "by definition", V=0.2, e=0.02)
    assert (found.symbol, found.name, found.formula) == ("V_e", "expansion", "V * e")
    assert (found.value, found.source) == (0.004, "by definition")
    assert found.numbers == {"V": StepNumber(0.2, "volume"), "e": StepNumber(0.02, "ratio")}


def test_a_number_that_is_known_is_given() -> None:
    assert Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15, head_pa=3e4).demand("head_pa") == 3e4


def test_method_misses_what_it_needs_and_the_duty_does_not_have() -> None:
    method = METHODS["membrane"]
    half = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15, static_abs_pa=4e5)
    assert method.missing(BARE) == ("the static pressure at the tank", "the highest pressure allowed at the tank")
    assert method.missing(half) == ("the highest pressure allowed at the tank",)


def test_a_number_that_is_wanting_is_named_in_words() -> None:
    with pytest.raises(MissingInput) as refused:
        BARE.demand("head_pa")
    assert str(refused.value) == "the method needs the column of water above the tank"


def test_every_need_of_a_method_has_words() -> None:
    assert {need for method in METHODS.values() for need in method.needs} == set(INPUTS)


def test_a_larger_tank_may_be_filled_between_two_pressures() -> None:
    sized = Sizing(method="", tank_m3=0.08, expansion_m3=0.03, reserve_m3=0.01, charge_abs_pa=2e5, end_abs_pa=4e5)
    found = sized.fill_range(0.2)
    # By Boyle's law: 0.19 m3 of gas at the lowest fill, and 0.1 m3 at the end with 0.13 m3 at the highest fill.
    assert isinstance(found, FillRange)
    assert found.lowest_abs_pa == pytest.approx(2e5 * 0.2 / 0.19)
    assert found.highest_abs_pa == pytest.approx(2e5 * 0.2 / 0.13)


def test_a_tank_just_large_enough_has_one_fill_pressure() -> None:
    # 0.04 m3 of expansion and reserve; the gas halves.
    sized = Sizing(method="", tank_m3=0.08, expansion_m3=0.03, reserve_m3=0.01, charge_abs_pa=2e5, end_abs_pa=4e5)
    found = sized.fill_range(0.08)
    assert found.highest_abs_pa == pytest.approx(found.lowest_abs_pa)


def test_a_tank_too_small_has_no_fill_pressure() -> None:
    sized = Sizing(method="", tank_m3=0.08, expansion_m3=0.04, charge_abs_pa=2e5, end_abs_pa=4e5)
    with pytest.raises(NoTank) as refused:
        sized.fill_range(0.05)
    assert str(refused.value) == "a tank of 50.0 L is smaller than the 80.0 L needed"


def test_an_open_tank_is_not_filled_to_a_pressure() -> None:
    with pytest.raises(OutsideMethod) as refused:
        Sizing(method="", tank_m3=0.08, expansion_m3=0.04).fill_range(0.1)
    assert str(refused.value) == "an open tank has no charge and no pressure to be filled to"
