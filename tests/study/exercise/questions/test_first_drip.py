import pytest
from asking import asked

from plumbnet.study.exercise.answer import Measure
from plumbnet.study.exercise.question import Asked

RELIEF = "relief: {pressure: 150 psi}, input: 40000 Btu/h"
CLOSED = "street -> cv -> tee -> heater -> tap.hot"


def minutes(one: Asked) -> tuple[float, float]:
    """From when to when the first drop may be said to fall."""
    blank = one.blanks[1]
    assert isinstance(blank, Measure)
    assert blank.right is not None
    return (blank.right - blank.tolerance) / 60, (blank.right + blank.tolerance) / 60


def test_relief_valve_of_a_closed_house_drips_before_the_water_is_warm() -> None:
    """50 gallons grow by a thousandth for each 100 psi or so: 0.045 gal, a twentieth of all, from 60 to 150 psi."""
    (one,) = asked("first-drip", CLOSED, heater=RELIEF)
    assert (one.answer, one.outcome) == ("heater/relief", "safety relief")
    early, late = minutes(one)
    assert early < 3.0
    assert 12.0 < late < 20.0
    assert "The water of heater has grown by 0.103 gal after 18 min, 0.285 gal after 35 min and 0.839 gal" in one.prompt
    assert " give way by a thousandth of the heater's volume for each 100 psi." in one.prompt


def test_tank_that_is_too_small_puts_it_off() -> None:
    """2 gallons of air at 74.7 psi absolute are 0.907 at 164.7: room for 1.09, which the water of 90 gallons needs."""
    runs, large = f"{CLOSED}\ntee -> tank", f"{RELIEF}, volume: 90 gal"
    (one,) = asked("first-drip", runs, tank="volume: 2 gal, precharge: 60 psi", heater=large)
    early, late = minutes(one)
    assert one.answer == "heater/relief"
    assert early < 105 < late
    assert early > 80
    assert one.because[0].endswith(" tank takes up what it can before.")


def test_expansion_relief_drips_before_the_safety_relief() -> None:
    (one,) = asked("first-drip", f"{CLOSED}\ntee -> spill", spill="pressure: 80 psi", heater=RELIEF)
    assert (one.answer, one.outcome) == ("spill", "expansion relief")
    assert one.choice.options == ("heater/relief", "spill", "nothing")


@pytest.mark.parametrize(
    ("runs", "takes"),
    [
        ("street -> tee -> heater -> tap.hot", "street takes it from 60 psi on. "),
        (f"{CLOSED}\ntee -> tank", "tank takes it from 60 psi on. "),
    ],
)
def test_nothing_drips_where_something_takes_it_all(runs: str, takes: str) -> None:
    (one,) = asked("first-drip", runs, heater=RELIEF, tank="volume: 10 gal, precharge: 60 psi")
    assert (one.answer, one.blanks[1].answer("us")) == ("nothing", "none")
    assert one.because[0].startswith(takes)


def test_heater_that_fires_on_flow_makes_no_question() -> None:
    assert asked("first-drip", "street -> cv -> tankless -> tap.hot", tankless=RELIEF) == []


def test_tank_that_hardly_holds_it_makes_no_question() -> None:
    """It settles within 5 psi of what its expansion relief opens at."""
    runs = f"{CLOSED}\ntee -> tank -> spill".replace("tank -> spill", "tank\ntee -> spill")
    tank = "volume: 5 gal, precharge: 60 psi"
    assert asked("first-drip", runs, heater=RELIEF, tank=tank, spill="pressure: 80 psi") == []
