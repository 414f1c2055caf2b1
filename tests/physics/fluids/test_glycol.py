import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.physics.fluids import expansion, water
from plumbnet.physics.fluids.glycol import (
    Glycol,
    GlycolMissing,
    OutsideGlycol,
    freezing_k,
    glycol_density_kg_m3,
    glycol_growth,
)

KINDS: tuple[Glycol, ...] = ("propylene", "ethylene")
kinds = st.sampled_from(KINDS)
parts = st.floats(0.1, 0.6)
liquids = st.floats(275.0, 373.15)  # above every solution's freezing point


@pytest.fixture(scope="module", autouse=True)
def library() -> None:
    """Load the library, which takes seconds, before the first example is timed."""
    freezing_k("propylene", 0.3)


@given(kind=kinds, part=parts, one_k=liquids, other_k=liquids)
def test_a_solution_grows_with_warmth(kind: Glycol, part: float, one_k: float, other_k: float) -> None:
    cold_k, hot_k = sorted((one_k, other_k))
    assert glycol_density_kg_m3(kind, part, cold_k) >= glycol_density_kg_m3(kind, part, hot_k)
    grown = glycol_growth(kind, part, cold_k, hot_k)
    assert grown == pytest.approx(
        glycol_density_kg_m3(kind, part, cold_k) / glycol_density_kg_m3(kind, part, hot_k) - 1, abs=1e-15
    )
    assert glycol_growth(kind, part, hot_k, cold_k) == 0.0


@given(kind=kinds, part=st.floats(0.15, 0.6))
def test_antifreeze_grows_more_than_water(kind: Glycol, part: float) -> None:
    of_water = expansion.growth(283.15, 353.15, pressure_abs_pa=water.ATMOSPHERE_PA)
    assert glycol_growth(kind, part, 283.15, 353.15) > of_water


@given(kind=kinds, part=st.floats(0.1, 0.55))
def test_more_glycol_freezes_later(kind: Glycol, part: float) -> None:
    assert freezing_k(kind, part + 0.05) < freezing_k(kind, part) < 273.15


@pytest.mark.parametrize("kind", KINDS)
def test_a_solution_without_glycol_is_water(kind: Glycol) -> None:
    state = {"pressure_abs_pa": water.ATMOSPHERE_PA}
    assert glycol_density_kg_m3(kind, 0.0, 293.15) == 1 / water.specific_volume_m3_kg(293.15, **state)
    assert glycol_growth(kind, 0.0, 283.15, 353.15) == expansion.growth(283.15, 353.15, **state)
    assert freezing_k(kind, 0.0) == 273.15


@pytest.mark.parametrize("temperature_k", [283.15, 313.15, 353.15])
@pytest.mark.parametrize("kind", KINDS)
def test_the_tables_lead_to_water_where_the_glycol_ends(kind: Glycol, temperature_k: float) -> None:
    one, two, three = (glycol_density_kg_m3(kind, part, temperature_k) for part in (0.1, 0.2, 0.3))
    at_none = 3 * one - 3 * two + three  # the parabola through the three, extended
    assert at_none == pytest.approx(glycol_density_kg_m3(kind, 0.0, temperature_k), rel=4e-3)


def test_parts_are_by_volume() -> None:
    # From memory: pure ethylene glycol has 1113 kg/m3 at 20 degC, so that 40 % by volume are some 43 % by mass.
    by_mass = 0.4 * 1113 / glycol_density_kg_m3("ethylene", 0.4, 293.15)
    assert by_mass == pytest.approx(0.42, abs=0.01)
    assert freezing_k("ethylene", 0.4) - 273.15 == pytest.approx(-24.8, abs=0.3)  # by mass it would be -22.3


@pytest.mark.parametrize(
    ("part", "temperature_k", "text"),
    [
        (0.05, 293.15, "5% of glycol by volume is neither plain water nor within 10% to 60%"),
        (0.7, 293.15, "70% of glycol by volume is neither plain water nor within 10% to 60%"),
        (float("nan"), 293.15, "nan% of glycol by volume is neither plain water nor within 10% to 60%"),
        (0.3, 255.15, "water with 30% propylene glycol by volume freezes at -13.1 degC; -18.0 is colder"),
        (0.3, 383.15, "water with 30% propylene glycol by volume is known from -35 to 100 degC, not at 110.0"),
        (0.6, 233.15, "water with 60% propylene glycol by volume is known from -35 to 100 degC, not at -40.0"),
    ],
)
def test_what_the_tables_do_not_hold_is_refused_in_words(part: float, temperature_k: float, text: str) -> None:
    with pytest.raises(OutsideGlycol) as refused:
        glycol_density_kg_m3("propylene", part, temperature_k)
    assert str(refused.value) == text


def test_the_ends_of_the_tables_are_within_them() -> None:
    assert glycol_density_kg_m3("propylene", 60 / 100, -35 + 273.15) == pytest.approx(1072.92, abs=0.01)
    assert glycol_density_kg_m3("propylene", 60 / 100, 100 + 273.15) == pytest.approx(984.94, abs=0.01)


def test_without_the_library_the_message_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "CoolProp.CoolProp", None)
    with pytest.raises(GlycolMissing) as missing:
        glycol_growth("ethylene", 0.3217, 283.15, 353.15)  # a part that no other test has asked for and kept
    assert str(missing.value) == "antifreeze needs the library CoolProp: pip install plumbnet[glycol]"


def test_plain_water_needs_no_library(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "CoolProp.CoolProp", None)
    assert glycol_growth("ethylene", 0.0, 283.15, 353.15) > 0


@pytest.mark.parametrize("kind", KINDS)
def test_water_without_glycol_counts_from_its_density_maximum(kind: Glycol) -> None:
    of_water = expansion.growth(274.15, 353.15, pressure_abs_pa=water.ATMOSPHERE_PA)
    assert glycol_growth(kind, 0.0, 274.15, 353.15) == of_water
    with pytest.raises(OutsideGlycol):
        glycol_growth(kind, 1.0, 283.15, 353.15)
