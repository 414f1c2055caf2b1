import pytest
from posing import RELIEF, posed, said

from plumbnet.study.beliefs.answer_hints import exercise_hints
from plumbnet.study.beliefs.hint import Hint, MeasureHints
from plumbnet.study.exercise.answer import Measure
from plumbnet.study.exercise.exercise import Exercise

HEATER = f"{RELIEF}, input: 40000 Btu/h"
CLOSED = "street -> cv -> tee -> heater -> tap.hot"
TRAPPED = posed("first-drip", CLOSED, heater=HEATER)
"""Its relief valve drips after some 4 to 14 minutes; it is hot after 70."""


def after(exercise: Exercise, minutes: float) -> Hint:
    hints = exercise_hints(exercise)[1]
    assert isinstance(hints, MeasureHints)
    return hints.of(60.0 * minutes)


def test_who_has_nothing_drip_is_told_by_what_was_passed_over() -> None:
    assert said(TRAPPED, "nothing").name == "check-passed-over"
    spilt = posed("first-drip", f"{CLOSED}\ntee -> spill", heater=HEATER, spill="pressure: 75 psi")
    assert said(spilt, "nothing").name == "drip-overlooked"
    assert said(spilt, "heater/relief").name == "relief-takes-care"


def test_who_has_the_relief_valve_drip_where_the_street_takes_it_is_told_of_that() -> None:
    assert said(posed("first-drip", CLOSED.replace("cv -> ", ""), heater=HEATER), "heater/relief").name == (
        "relief-takes-care"
    )


@pytest.mark.parametrize(("minutes", "name"), [(70, "hot-for-drip"), (35, "drips-sooner")])
def test_minutes_are_told_by_what_happens_then(minutes: float, name: str) -> None:
    assert after(TRAPPED, minutes).name == name


def test_seconds_are_told_as_such() -> None:
    minutes = TRAPPED.asked.blanks[1]
    assert isinstance(minutes, Measure)
    assert after(TRAPPED, minutes.right or 0.0).name == "other-unit-of-time"


def test_limit_is_passed_before_a_valve_drips() -> None:
    tanked = posed("first-drip", f"{CLOSED}\ntee -> tank", heater=f"{HEATER}, volume: 90 gal", tank="volume: 2 gal")
    assert after(tanked, 62).name == "limit-for-drip"
    assert after(tanked, 20).name == "drips-later"


def test_minutes_with_a_tank_that_is_cut_off_are_those_of_a_belief() -> None:
    beside = posed("first-drip", "street -> tee -> cv -> heater -> tap.hot\ntee -> tank", heater=HEATER)
    assert after(beside, 35).name == "any-tank-anywhere"
