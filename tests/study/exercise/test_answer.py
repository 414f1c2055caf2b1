import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.layout.units.units import PRESSURE
from plumbnet.study.exercise.answer import Choice, Judged, Measure

PSI = 6894.757293168361
VERDICTS = Choice("heater is", ("open", "controlled", "trapped", "on-demand"), "trapped")
HEATERS = Choice("Trapped:", ("heater-a", "heater-b", "heater-a and heater-b", "none"), "heater-b")
SIZES = Choice("The size is", ("2 gal", "3 gal", "5 gal", "50 gal", "no tank can do it"), "5 gal")
CHARGE = Measure("Charged to", PRESSURE, 62 * PSI, 1.5 * PSI)


@pytest.mark.parametrize("typed", ["trapped", "TRAPPED", " traped ", "trappd", "c", "C"])
def test_slips_of_the_pen_are_forgiven(typed: str) -> None:
    assert VERDICTS.judged(typed, "us") == Judged("trapped", is_right=True)


@pytest.mark.parametrize(
    ("typed", "taken"), [("opne", "open"), ("on demand", "on-demand"), ("contolled", "controlled")]
)
def test_another_option_is_understood_and_wrong(typed: str, taken: str) -> None:
    assert VERDICTS.judged(typed, "us") == Judged(taken, is_right=False)


@pytest.mark.parametrize("typed", ["", "  ", "x", "z", "?", "pizza", "e", "\x1b[2J", "a" * 10_000])
def test_what_is_like_nothing_is_asked_for_again(typed: str) -> None:
    judged = VERDICTS.judged(typed, "us")
    assert judged.taken is None
    assert judged.advice == "a letter from a to d will do"


def test_word_that_may_mean_either_is_taken_for_neither() -> None:
    assert HEATERS.judged("heater", "us").taken is None
    assert HEATERS.judged("heater-x", "us").taken is None
    assert HEATERS.judged("heatr b", "us").is_right


def test_size_may_be_typed_without_its_unit() -> None:
    assert SIZES.judged("5", "us").is_right
    assert SIZES.judged("50", "us") == Judged("50 gal")
    assert SIZES.judged("no tank", "us") == Judged("no tank can do it")


@pytest.mark.parametrize("typed", ["62", "62 psi", "63", "61 PSI", " 4.27 bar", "427 kPa"])
def test_pressure_is_right_as_a_gauge_is_read(typed: str) -> None:
    assert CHARGE.judged(typed, "us").is_right


@pytest.mark.parametrize(("typed", "taken"), [("60", "60 psi"), ("64", "64 psi"), ("80 psi", "80 psi")])
def test_pressure_that_is_off_is_wrong(typed: str, taken: str) -> None:
    judged = CHARGE.judged(typed, "us")
    assert (judged.taken, judged.is_right) == (taken, False)
    assert judged.value == pytest.approx(float(taken.split(maxsplit=1)[0]) * 6894.757)


def test_what_is_no_pressure_is_explained() -> None:
    judged = CHARGE.judged("5 gal", "us")
    assert judged.taken is None
    assert "pressure" in judged.advice


def test_bare_number_counts_in_the_units_of_the_layout() -> None:
    assert CHARGE.judged("427", "metric").is_right


def test_answer_is_told_in_words() -> None:
    assert (VERDICTS.answer("us"), CHARGE.answer("us"), CHARGE.answer("metric")) == ("trapped", "62 psi", "427 kPa")
    assert Measure("Charged to", PRESSURE, None, 0.0).answer("us") == "none"


@given(st.text(max_size=80))
def test_nothing_typed_can_stop_it(typed: str) -> None:
    for blank in (VERDICTS, HEATERS, SIZES):
        judged = blank.judged(typed, "us")
        assert judged.taken is None or judged.taken in blank.options
    assert CHARGE.judged(typed, "us").taken is None or "psi" in str(CHARGE.judged(typed, "us").taken)


@given(st.sampled_from(VERDICTS.options))
def test_every_option_means_itself(option: str) -> None:
    assert VERDICTS.judged(option, "us").taken == option
