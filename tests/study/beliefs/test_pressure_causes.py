import pytest
from posing import PSI, RELIEF, posed, said_of_number

from plumbnet.study.beliefs.hint import told
from plumbnet.study.beliefs.pressure_causes import pressure_hints
from plumbnet.study.beliefs.reading import heater_asked

ONE = posed("opens-first", "street -> cv -> heater -> tap.hot", heater=RELIEF)


@pytest.mark.parametrize(
    ("psi", "name"),
    [
        (164.7, "absolute-for-gauge"),
        (1034.0, "other-unit-of-pressure"),
        (10.34, "other-unit-of-pressure"),
        (140.0, "less-than-stands"),
        (300.0, "more-than-stands"),
    ],
)
def test_slips_of_gauge_and_unit_are_known_by_their_number(psi: float, name: str) -> None:
    assert said_of_number(ONE, psi).name == name


def test_cause_that_lies_at_the_right_number_is_none() -> None:
    hint = told("limit-for-charge", {})
    (hints,) = pressure_hints(heater_asked(ONE), ONE, [(150.5 * PSI, hint), (120 * PSI, hint)])
    assert [round(cause / PSI) for cause, one in hints.causes if one is hint] == [120]
