"""Numbers with units, as people write them, to SI and back."""

import math
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.layout.units.measure import QuantityError, parse_measure, show, show_bound, to
from plumbnet.layout.units.units import (
    DIMENSIONS,
    FLOW,
    FRACTION,
    LENGTH,
    POWER,
    PRESSURE,
    SIZE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TIME,
    VOLUME,
    Dimension,
    Units,
)

PSI, BTU_H, GALLON = 6894.757293168, 0.29307107017, 0.003785411784


def refused(written: str | float, dimension: Dimension, units: Units | None = "us") -> str:
    with pytest.raises(QuantityError) as caught:
        parse_measure(written, dimension, units)
    return str(caught.value)


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("62 psi", PRESSURE, 62 * PSI),
        ("62psi", PRESSURE, 62 * PSI),
        ("  62   psig  ", PRESSURE, 62 * PSI),
        ("62 PSI", PRESSURE, 62 * PSI),
        ("4.3 bar", PRESSURE, 430_000),
        ("430 kpa", PRESSURE, 430_000),
        ("0.43 MPa", PRESSURE, 430_000),
        ("4300 mbar", PRESSURE, 430_000),
        ("10 mH2O", PRESSURE, 98_066.5),
        ("-5 psi", PRESSURE, -5 * PSI),
        ("+5 psi", PRESSURE, 5 * PSI),
        ("1/2 in", SIZE, 0.0127),
        ('3/4"', SIZE, 0.01905),
        ("1-1/4 in", SIZE, 0.03175),
        ("1 1/2 in", SIZE, 0.0381),
        ("1½ in", SIZE, 0.0381),
        ("¾ inch", SIZE, 0.01905),
        ("22 mm", SIZE, 0.022),
        ("-5 ft", LENGTH, -1.524),
        ("−5 ft", LENGTH, -1.524),
        ("9'", LENGTH, 2.7432),
        ("30 feet", LENGTH, 9.144),
        ("-1-1/2 ft", LENGTH, -0.4572),
        (".5 m", LENGTH, 0.5),
        ("5. m", LENGTH, 5.0),
        ("50 gal", VOLUME, 50 * GALLON),
        ("50 Gallons", VOLUME, 50 * GALLON),
        ("190 l", VOLUME, 0.19),
        ("190 litres", VOLUME, 0.19),
        ("1,250.5 L", VOLUME, 1.2505),
        ("500 ml", VOLUME, 0.0005),
        ("0.19 m³", VOLUME, 0.19),
        ("140 degF", TEMPERATURE, 333.15),
        ("140 °F", TEMPERATURE, 333.15),
        ("140ºf", TEMPERATURE, 333.15),
        ("60 C", TEMPERATURE, 333.15),
        ("-40 degF", TEMPERATURE, 233.15),
        ("333.15 K", TEMPERATURE, 333.15),
        ("18 degF", TEMPERATURE_DIFFERENCE, 10.0),
        ("40,000 Btu/h", POWER, 40_000 * BTU_H),
        ("40000 BTU/HR", POWER, 40_000 * BTU_H),
        ("40 MBH", POWER, 40_000 * BTU_H),
        ("4e4 btuh", POWER, 40_000 * BTU_H),
        ("12 kW", POWER, 12_000.0),
        ("2.5 gpm", FLOW, 2.5 * GALLON / 60),
        ("9 L/min", FLOW, 0.00015),
        ("85 %", FRACTION, 0.85),
        ("85%", FRACTION, 0.85),
        ("0.85", FRACTION, 0.85),
        ("30 min", TIME, 1800.0),
        ("1 1/2 h", TIME, 5400.0),
    ],
)
@pytest.mark.parametrize("units", ["us", "metric"])
def test_text_with_a_unit_means_the_same_everywhere(
    text: str, dimension: Dimension, value: float, units: Units
) -> None:
    assert parse_measure(text, dimension, units) == pytest.approx(value, rel=1e-10)
    assert parse_measure(text, dimension, None) == pytest.approx(value, rel=1e-10)


@pytest.mark.parametrize(
    ("dimension", "us", "metric"),
    [
        (PRESSURE, 62 * PSI, 62_000.0),
        (LENGTH, 18.8976, 62.0),
        (SIZE, 1.5748, 0.062),
        (VOLUME, 62 * GALLON, 0.062),
        (TEMPERATURE, 289.8166667, 335.15),
        (TEMPERATURE_DIFFERENCE, 34.4444444, 62.0),
        (POWER, 62 * BTU_H, 62_000.0),
        (FLOW, 62 * GALLON / 60, 0.062 / 60),
        (TIME, 3720.0, 3720.0),
    ],
    ids=lambda value: value.name if isinstance(value, Dimension) else "",
)
def test_bare_number_takes_the_units_of_the_file(dimension: Dimension, us: float, metric: float) -> None:
    for written in (62, 62.0, "62", " 62.0 "):
        assert parse_measure(written, dimension, "us") == pytest.approx(us, rel=1e-8)
        assert parse_measure(written, dimension, "metric") == pytest.approx(metric, rel=1e-8)
    assert parse_measure(62, dimension, None) == 62.0


@pytest.mark.parametrize(
    ("written", "dimension", "said"),
    [
        ("62 psi", VOLUME, '"62 psi" is a pressure; a volume is wanted here, for example "50 gal"'),
        ("3 FT", SIZE, '"3 FT" is a length; a size is wanted here, for example "3/4 in"'),
        ("140 degF", FLOW, '"140 degF" is a temperature; a flow is wanted here, for example "2.5 gpm"'),
        ("62 psy", PRESSURE, 'unknown unit "psy" in "62 psy": did you mean "psi"?'),
        ("62 furlongs", PRESSURE, 'unknown unit "furlongs" in "62 furlongs"; write it like "62 psi"'),
        ("5 mpa", PRESSURE, 'unknown unit "mpa" in "5 mpa": did you mean "MPa"?'),
        ("5 MBAR", PRESSURE, 'unknown unit "MBAR" in "5 MBAR": did you mean "mbar"?'),
        ("5 mW", POWER, 'unknown unit "mW" in "5 mW": did you mean "MW"?'),
        (
            "77 psia",
            PRESSURE,
            '"77 psia" is an absolute pressure and gauge pressures are read; take off the air\'s 14.7 psi',
        ),
        (
            "5 bara",
            PRESSURE,
            '"5 bara" is an absolute pressure and gauge pressures are read; take off the air\'s 1.01 bar',
        ),
        ("77 psia", VOLUME, 'unknown unit "psia" in "77 psia"; write it like "50 gal"'),
        ("", PRESSURE, '"" is no pressure; write it like "62 psi"'),
        ("psi", PRESSURE, '"psi" is no pressure; write it like "62 psi"'),
        ("nan", PRESSURE, '"nan" is no pressure; write it like "62 psi"'),
        ("six psi", PRESSURE, '"six psi" is no pressure; write it like "62 psi"'),
        ("1.2.3 psi", PRESSURE, '"1.2.3 psi" is no pressure; write it like "62 psi"'),
        ("1/2/3 in", SIZE, '"1/2/3 in" is no size; write it like "3/4 in"'),
        ("２ in", SIZE, '"２ in" is no size; write it like "3/4 in"'),
        ("4,5 gal", VOLUME, '"4,5 gal" is no volume; commas part thousands, a point the decimals, as in "1,250.5"'),
        (
            "1234,567 gal",
            VOLUME,
            '"1234,567 gal" is no volume; commas part thousands, a point the decimals, as in "1,250.5"',
        ),
        ("1/0 in", SIZE, '"1/0 in" divides by zero; write it like "3/4 in"'),
        ("-5 gal", VOLUME, '"-5 gal" is too low; a volume is at least 0 gal'),
        (-5, VOLUME, '"-5 gal" is too low; a volume is at least 0 gal'),
        ("0 in", SIZE, '"0 in" is too low; a size is above 0 in'),
        ("-500 degF", TEMPERATURE, '"-500 degF" is too low; a temperature is above -459.67 degF'),
        ("0 K", TEMPERATURE, '"0 K" is too low; a temperature is above 0 K'),
        ("-15 psi", PRESSURE, '"-15 psi" is too low; a pressure is at least -14.6959 psi'),
        ("120 %", FRACTION, '"120 %" is too high; a fraction is at most 100 %'),
        (85, FRACTION, '"85" is too high; a fraction is at most 100 %'),
        (math.nan, PRESSURE, 'a pressure is a finite number, for example "62 psi"'),
        (math.inf, PRESSURE, 'a pressure is a finite number, for example "62 psi"'),
        ("1e999 psi", PRESSURE, '"1e999 psi" is too high; a pressure is at most 14,503.8 psi'),
        (1e308, PRESSURE, '"1e+308 psi" is too high; a pressure is at most 14,503.8 psi'),
        (10**400, PRESSURE, '"1e400 psi" is too high; a pressure is at most 14,503.8 psi'),
        (-(10**400), VOLUME, '"-1e400 gal" is too low; a volume is at least 0 gal'),
        (f"{'9' * 90}/3 in", SIZE, '"' + "9" * 57 + '..." is too high; a size is at most 3937.01 in'),
        (1e-320, VOLUME, '"1e-320 gal" is next to nothing; write 0 or at least 0.000000265 gal'),
        ("-1e-310 ft", LENGTH, '"-1e-310 ft" is next to nothing; write 0 or at least 0.0000329 ft'),
        ("1e-310 in", SIZE, '"1e-310 in" is next to nothing; write at least 0.000394 in'),
        ("1e-7 K", TEMPERATURE, '"1e-7 K" is next to nothing; write at least 1 K'),
        (True, PRESSURE, 'a pressure is wanted here, for example "62 psi"'),
        ("1" * 101, PRESSURE, '"' + "1" * 57 + '..." is too long for a pressure; write it like "62 psi"'),
    ],
)
def test_what_is_wrong_is_said_with_what_would_be_right(written: str | float, dimension: Dimension, said: str) -> None:
    assert refused(written, dimension) == said


def test_examples_are_in_the_units_of_the_file() -> None:
    assert refused("x", VOLUME, "metric") == '"x" is no volume; write it like "190 L"'
    assert refused(-5, VOLUME, "metric").split("; ") == ['"-5 L" is too low', "a volume is at least 0 L"]
    assert refused("-200 kPa", PRESSURE, "metric").split("; ") == [
        '"-200 kPa" is too low',
        "a pressure is at least -101.325 kPa",
    ]


def test_without_units_a_text_must_have_its_own() -> None:
    assert refused("62", PRESSURE, None) == '"62" has no unit; write it like "62 psi"'
    assert refused(-1.0, VOLUME, None).split("; ") == ['"-1000 L" is too low', "a volume is at least 0 L"]
    assert refused(1e-320, VOLUME, None).startswith('"1e-320 in SI" is next to nothing; ')
    assert refused(10**400, VOLUME, None).startswith('"1e400 in SI" is too high; ')


@pytest.mark.parametrize("written", [None, [], {}, b"62 psi"])
def test_what_is_no_number_and_no_text_is_refused(written: object) -> None:
    said = refused(written, PRESSURE)  # type: ignore[arg-type] # the mistake under test
    assert said.split(", ") == ["a pressure is wanted here", 'for example "62 psi"']


def _bounds(dimension: Dimension) -> tuple[tuple[float, bool], ...]:
    return (dimension.ceiling, False), (dimension.finest, True)


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_bound_that_is_shown_is_allowed(dimension: Dimension) -> None:
    for unit, bound, low in ((unit, *one) for unit in dimension.units if unit for one in _bounds(dimension)):
        read = parse_measure(show_bound(bound, unit, dimension, low=low), dimension, "us")
        assert read == pytest.approx(bound, rel=0.01, abs=0.5 * dimension.finest)
        assert (read >= bound * (1 - 1e-12)) if low else (read <= bound * (1 + 1e-12))


def test_zero_has_no_sign() -> None:
    for written in (-0.0, "-0", "-0.0 ft"):
        assert math.copysign(1.0, parse_measure(written, LENGTH, "us")) == 1.0


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_examples_can_be_read(dimension: Dimension) -> None:
    for example in dimension.examples:
        parse_measure(example, dimension, "us")


@pytest.mark.parametrize(
    ("value", "dimension", "units", "shown"),
    [
        (62 * PSI, PRESSURE, "us", "62 psi"),
        (62.04 * PSI, PRESSURE, "us", "62 psi"),
        (62.16 * PSI, PRESSURE, "us", "62.2 psi"),
        (427_475, PRESSURE, "metric", "427 kPa"),
        (-0.001, PRESSURE, "us", "0 psi"),
        (50 * GALLON, VOLUME, "us", "50 gal"),
        (0.84012 * GALLON, VOLUME, "us", "0.84 gal"),
        (1234.4 * GALLON, VOLUME, "us", "1234 gal"),
        (0.0031799, VOLUME, "metric", "3.18 L"),
        (0.0, VOLUME, "us", "0 gal"),
        (333.15, TEMPERATURE, "us", "140 degF"),
        (333.15, TEMPERATURE, "metric", "60 degC"),
        (283.7, TEMPERATURE, "metric", "10.6 degC"),
        (40_000 * BTU_H, POWER, "us", "40,000 Btu/h"),
        (10.0, VOLUME, "metric", "10,000 L"),
        (9_500 * BTU_H, POWER, "us", "9500 Btu/h"),
        (11_722.8, POWER, "metric", "11.7 kW"),
        (0.0127, SIZE, "us", "1/2 in"),
        (0.03175, SIZE, "us", "1-1/4 in"),
        (0.0508, SIZE, "us", "2 in"),
        (0.022, SIZE, "us", "0.866 in"),
        (0.022, SIZE, "metric", "22 mm"),
        (9.144, LENGTH, "us", "30 ft"),
        (-1.524, LENGTH, "us", "-5 ft"),
        (9.144, LENGTH, "metric", "9.14 m"),
        (0.85, FRACTION, "us", "85 %"),
        (750.0, TIME, "metric", "12.5 min"),
        (2.5 * GALLON / 60, FLOW, "us", "2.5 gpm"),
        (10.0, TEMPERATURE_DIFFERENCE, "us", "18 degF"),
        (math.inf, PRESSURE, "us", "inf psi"),
        (math.nan, VOLUME, "us", "nan gal"),
    ],
)
def test_reports_round_as_the_trade_does(value: float, dimension: Dimension, units: Units, shown: str) -> None:
    assert show(value, dimension, units) == shown


def test_digits_asked_for_are_shown() -> None:
    assert show(62.0449 * PSI, PRESSURE, "us", 5) == "62.045 psi"
    assert show(0.022, SIZE, "us", 6) == "0.866142 in"
    assert show(123_456.0, PRESSURE, "metric", 1) == "123 kPa"


def test_value_can_be_had_in_any_unit() -> None:
    assert to(0.0127, "in", SIZE) == pytest.approx(0.5, rel=1e-15)
    assert to(333.15, "degF", TEMPERATURE) == pytest.approx(140.0, rel=1e-13)
    with pytest.raises(KeyError):
        to(1.0, "psi", VOLUME)


KNOWN = st.sampled_from([(dimension, unit) for dimension in DIMENSIONS for unit in dimension.units])
EITHER = st.sampled_from(["us", "metric"])


@given(KNOWN, st.floats(0.001, 1e9), EITHER)
def test_every_unit_goes_in_and_out(known: tuple[Dimension, str], number: float, units: Units) -> None:
    dimension, unit = known
    scale = dimension.units[unit]
    value = number * scale.size + scale.zero
    if value <= dimension.ceiling:
        read = parse_measure(f"{number!r} {unit}", dimension, units)
        assert read == pytest.approx(value, rel=1e-15)
        assert to(read, unit or "", dimension) == pytest.approx(number, rel=1e-9)


@given(st.sampled_from([VOLUME, POWER, FLOW, TIME]), st.floats(1e-6, 1e7), EITHER)
def test_rounding_for_the_trade_keeps_three_digits(dimension: Dimension, value: float, units: Units) -> None:
    value = max(min(value, dimension.ceiling), 1.01 * dimension.finest)
    assert parse_measure(show(value, dimension, units), dimension, units) == pytest.approx(value, rel=5.01e-3)


@given(st.sampled_from(DIMENSIONS), st.floats(1.0, 1e7), EITHER)
def test_what_a_report_shows_can_be_read_again(dimension: Dimension, value: float, units: Units) -> None:
    value = min(value, dimension.ceiling)
    assert parse_measure(show(value, dimension, units, 17), dimension, units) == pytest.approx(value, rel=1e-12)


@given(st.sampled_from(DIMENSIONS), st.floats(1.0, 1e7))
def test_us_and_metric_files_mean_the_same(dimension: Dimension, value: float) -> None:
    value = min(value, dimension.ceiling)
    us, metric = (show(value, dimension, units, 17) for units in ("us", "metric"))
    assert parse_measure(us, dimension, "metric") == pytest.approx(parse_measure(metric, dimension, "us"), rel=1e-12)


@given(
    st.text() | st.from_regex(r"[-+]?[0-9./, -]{0,8}[a-zA-Z%°/]{0,4}", fullmatch=True),
    st.sampled_from(DIMENSIONS),
    EITHER,
)
def test_random_text_is_a_finite_number_or_refused(text: str, dimension: Dimension, units: Units) -> None:
    with suppress(QuantityError):
        assert math.isfinite(parse_measure(text, dimension, units))


@given(st.integers() | st.floats(), st.sampled_from(DIMENSIONS), st.sampled_from(["us", "metric", None]))
def test_random_number_is_finite_or_refused(number: float, dimension: Dimension, units: Units | None) -> None:
    with suppress(QuantityError):
        assert math.isfinite(parse_measure(number, dimension, units))
