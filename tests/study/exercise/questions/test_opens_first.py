import pytest
from asking import asked

from plumbnet.study.exercise.answer import Choice, Measure

PSI = 6894.757293168361
RELIEF = "relief: {pressure: 150 psi}"


@pytest.mark.parametrize(
    ("runs", "outlet", "psi", "outcome"),
    [
        ("street -> heater -> tap.hot", "street", 60, "main"),
        ("street -> cv -> heater -> tap.hot", "heater/relief", 150, "safety relief"),
        ("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", "tank", 60, "expansion tank"),
        ("street -> cv -> tee -> heater -> tap.hot\ntee -> spill", "spill", 100, "expansion relief"),
    ],
)
def test_lowest_outlet_and_its_pressure_are_the_answer(runs: str, outlet: str, psi: int, outcome: str) -> None:
    (one,) = asked("opens-first", runs, heater=RELIEF)
    choice, measure = one.blanks
    assert isinstance(choice, Choice)
    assert isinstance(measure, Measure)
    assert (choice.right, one.outcome) == (outlet, outcome)
    assert outlet in choice.options
    assert measure.right == pytest.approx(psi * PSI)


def test_what_opens_past_the_limit_is_said_to() -> None:
    (one,) = asked("opens-first", "street -> cv -> heater -> tap.hot", heater=RELIEF)
    (reason,) = one.because
    assert "heater/relief opens lowest: at 150 psi" in reason
    assert reason.endswith("past the limit.")


def test_waterlogged_tank_is_offered_and_wrong() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    (one,) = asked("opens-first", runs, heater=RELIEF, tank="state: waterlogged")
    choice = one.blanks[0]
    assert isinstance(choice, Choice)
    assert "tank" in choice.options
    assert choice.right == "heater/relief"


def test_two_outlets_at_one_pressure_make_no_question() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> tank2"
    assert asked("opens-first", runs, heater=RELIEF) == []


def test_heater_that_waits_for_a_tap_is_not_asked_about() -> None:
    assert asked("opens-first", "street -> cv -> tankless -> tap.hot", tankless=RELIEF) == []
