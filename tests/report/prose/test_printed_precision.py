"""As many digits as a reader needs, and no more."""

from dataclasses import replace

import pytest

from plumbnet.physics.sizing.duty import StepNumber, step
from plumbnet.report.prose.printed_precision import (
    at_least,
    decimal,
    evaluate,
    last_digit,
    printed_number,
    written_step,
)


def test_numbers_get_more_digits_where_the_result_needs_them() -> None:
    growth = step("e", "growth", "v_2 / v_1 - 1", 1.0000123456 - 1.0, "", v_1=1.0, v_2=1.0000123456)
    printed = written_step(growth, "metric")
    reached = evaluate(printed.formula, {each.symbol: float(each.text) for each in printed.numbers})
    assert reached == pytest.approx(float(printed.result.text), abs=last_digit(printed.result.text))
    assert len(printed.numbers[1].text) > len("1000.012")


def test_numbers_stay_short_where_six_digits_do() -> None:
    tank = step("V_t", "tank", "2 * V_e", 0.02, "", V_e=0.01)
    assert [each.with_unit for each in written_step(tank, "metric").numbers] == ["10 L"]
    assert written_step(tank, "metric").result.with_unit == "20.0000 L"


def test_number_that_is_only_taken_over_is_its_own_formula() -> None:
    taken = written_step(step("e", "growth", "e", 0.017, "a table", e=0.017), "us")
    assert (taken.formula, taken.numbers, taken.result.text) == ("0.017", (), "0.017")


def test_volume_looked_up_has_nine_digits() -> None:
    looked = written_step(step("v_1", "cold", "v(T_1, p)", 0.00100012345678, "", T_1=283.15, p=5e5), "metric")
    assert looked.result.with_unit == "1.00012346 L/kg"
    assert [each.with_unit for each in looked.numbers] == ["283.15 K (10 degC)", "500 kPa abs"]


def test_units_are_those_of_the_report() -> None:
    assert printed_number("p", 6894.757293168361, "pressure", "us").with_unit == "1 psi abs"
    assert printed_number("d", 1000.0, "pressure difference", "metric").with_unit == "1 kPa"
    assert printed_number("T", 283.15, "temperature", "us").with_unit == "283.15 K (50 degF)"
    assert printed_number("a", 1.17e-5, "per kelvin", "us").with_unit == "0.0000117 1/K"
    assert printed_number("v", 0.001, "specific volume", "us").text == "0.0160184634"


def test_decimal_never_uses_an_exponent() -> None:
    assert (decimal(1.5e-9, 3), decimal(2.5e9, 3), decimal(-0.25, 2)) == ("0.00000000150", "2500000000", "-0.25")


def test_least_volume_is_never_rounded_down() -> None:
    assert (at_least(0.01, "metric"), at_least(0.0100004, "metric"), at_least(1.2341e-5, "metric")) == (
        "10 L",
        "10.01 L",
        "0.01235 L",
    )


def test_formula_that_looks_something_up_comes_to_nothing_here() -> None:
    assert evaluate("v(T, p)", {"T": 1.0, "p": 1.0}) is None
    assert evaluate("max(0, p_sat(T) - p)", {"T": 1.0, "p": 1.0}) is None


def test_formula_is_arithmetic_and_nothing_else() -> None:
    with pytest.raises(ValueError, match="a formula has no Pow"):
        evaluate("2 ** 3", {})
    assert evaluate("min(3, 2) - 1", {}) == 1.0


def test_numbers_get_more_digits_where_few_would_divide_by_nothing() -> None:
    quotient = step("V", "tank", "V_e / (1 - p_1 / p_2)", 1e5 / 0.3, "", V_e=0.001, p_1=99_999_999.7, p_2=1e8)
    quotient = replace(quotient, numbers={**quotient.numbers, "p_1": StepNumber(1e8 - 0.3, "pressure")})
    printed = written_step(quotient, "metric")
    assert [number.text for number in printed.numbers][1:] == ["99999.9997", "100000"]
