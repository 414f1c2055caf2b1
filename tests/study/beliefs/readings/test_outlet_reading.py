import pytest
from posing import RELIEF, posed, said, said_of_number


def test_option_is_an_outlet_that_was_taken_for_the_first() -> None:
    one = posed("opens-first", "street -> cv -> tee -> heater -> tap.hot\ntee -> tank", heater=RELIEF)
    assert said(one, "heater/relief").name == "relief-takes-care"


def test_set_of_the_reducer_that_stops_the_water_is_a_belief() -> None:
    runs = "street -> prv -> heater -> tap.hot"
    one = posed("opens-first", runs, street="pressure: 100 psi", prv="set: 60 psi", heater=RELIEF)
    assert said_of_number(one, 60).name == "reducer-caps-pressure"


@pytest.mark.parametrize(
    ("psi", "name"),
    [(60, "cold-for-opening"), (80, "limit-for-opening"), (150, "another-outlets-pressure"), (100, "height-forgotten")],
)
def test_pressure_is_told_by_what_it_is_the_pressure_of(psi: float, name: str) -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> spill"
    one = posed("opens-first", runs, spill="pressure: 100 psi, elevation: 30 ft", heater=RELIEF)
    assert said_of_number(one, psi).name == name
