import pytest
from posing import RELIEF, posed, said, said_of_number

ONE = posed("tank", "street -> cv -> heater -> tap.hot", heater=RELIEF)
"""It grows by 0.839 gal from 60 to 80 psi: Boyle's law asks for 3.97 gal, the next size is 5."""


@pytest.mark.parametrize(
    ("option", "name"),
    [
        ("2 gal", "growth-for-size"),
        ("3 gal", "few-degrees-do-not-matter"),
        ("20 gal", "other-unit-of-volume"),
        ("15 gal", "size-beats-charge"),
        ("no tank can do it", "size-needed-after-all"),
    ],
)
def test_size_is_told_by_the_slip_that_leads_to_it(option: str, name: str) -> None:
    assert ONE.asked.blanks[0].answer("us") == "5 gal"
    assert said(ONE, option).name == name


def test_growth_of_one_heater_alone_is_the_growth_of_the_wrong_water() -> None:
    runs = "street -> cv -> tee -> heater1 -> tap.hot\ntee -> heater2 -> tap2.hot"
    small = f"{RELIEF}, volume: 45 gal"
    one = posed("tank", runs, heater1=small, heater2=small)
    hint = said(one, "5 gal")
    assert hint.name == "own-growth-alone"
    assert "the tank meets the water of heater1 and heater2" in hint.text


def test_growth_of_water_that_does_not_come_to_the_tank_is_told() -> None:
    runs = "street -> tee -> cv -> heater1 -> tap.hot\ntee -> heater2 -> tap2.hot"
    assert said(posed("tank", runs, heater1=RELIEF, heater2=RELIEF), "8 gal").name == "too-much-water-counted"


def test_tank_against_what_stands_cold_takes_a_high_pressure_for_a_trapped_one() -> None:
    high = posed("tank", "street -> cv -> heater -> tap.hot", street="pressure: 90 psi", heater=RELIEF)
    assert said(high, "5 gal").name == "high-is-trapped"


@pytest.mark.parametrize(
    ("psi", "name"),
    [
        (40, "size-beats-charge"),
        (12, "size-beats-charge"),
        (80, "limit-for-charge"),
        (150, "relief-for-limit"),
        (55, "less-than-stands"),
    ],
)
def test_charge_is_told_by_what_it_is_the_pressure_of(psi: float, name: str) -> None:
    assert said_of_number(ONE, psi).name == name


def test_streets_pressure_behind_a_reducer_is_told() -> None:
    one = posed("tank", "street -> prv -> heater -> tap.hot", street="pressure: 70 psi", heater=RELIEF)
    high = posed("tank", "street -> prv -> heater -> tap.hot", street="pressure: 90 psi", heater=RELIEF)
    assert said(one, "no tank can do it").name == "size-needed-after-all"
    assert said(high, "no tank can do it").name == "street-for-line"
    assert said_of_number(one, 70).name == "street-for-line"
