import pytest
from posing import RELIEF, posed, said

TANKED = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"


@pytest.mark.parametrize(("option", "name"), [("heater/relief", "relief-takes-care"), ("street", "check-passed-over")])
def test_outlet_is_told_by_what_the_water_comes_to_there(option: str, name: str) -> None:
    assert said(posed("opens-first", TANKED, heater=RELIEF), option).name == name


@pytest.mark.parametrize(
    ("runs", "tank", "name"),
    [
        ("street -> tee -> cv -> heater -> tap.hot\ntee -> tank", "", "any-tank-anywhere"),
        (TANKED, "state: waterlogged", "worn-tank-counted"),
        (TANKED, "precharge: 200 psi", "size-beats-charge"),
    ],
)
def test_tank_that_is_not_first_is_told_why(runs: str, tank: str, name: str) -> None:
    assert said(posed("opens-first", runs, tank=tank, heater=RELIEF), "tank").name == name


def test_outlet_nobody_comes_to_is_only_that() -> None:
    one = posed("opens-first", "street -> tee -> cv -> heater -> tap.hot\ntee -> spill", heater=RELIEF)
    assert said(one, "spill").name == "outlet-not-reached"


def test_street_behind_a_bypass_that_opens_past_the_limit_is_a_belief() -> None:
    runs = "street -> prv -> tee -> heater -> tap.hot\ntee -> tank"
    one = posed("opens-first", runs, street="pressure: 100 psi", prv="set: 60 psi, bypass: true", heater=RELIEF)
    assert said(one, "street").name == "bypass-needs-no-tank"
