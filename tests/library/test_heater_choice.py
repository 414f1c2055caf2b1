"""Heaters by their names."""

import pytest
from conftest import system

import plumbnet
from plumbnet.library.heater_choice import UnknownHeater, heater_named, only_heater

ONE = plumbnet.check(system("street -> cv -> heater -> tap.hot"))
TWO = plumbnet.check(system("street -> tee -> cv -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"))
NONE = plumbnet.check(system("street -> tap.cold"))


def test_heater_is_found_by_its_name() -> None:
    assert heater_named(TWO, "heater2") is TWO.heaters[1]


@pytest.mark.parametrize(
    ("report", "name", "words"),
    [
        (ONE, "heatr", 'no heater is called "heatr" in drawn.yaml: did you mean "heater"?'),
        (TWO, "boiler", 'no heater is called "boiler" in drawn.yaml; there is heater1, heater2'),
        (NONE, "heater", 'no heater is called "heater" in drawn.yaml; there is none'),
    ],
)
def test_heater_that_is_not_there_is_told_with_those_that_are(report: plumbnet.Report, name: str, words: str) -> None:
    with pytest.raises(UnknownHeater) as caught:
        heater_named(report, name)
    assert str(caught.value) == words


def test_message_calls_the_layout_as_it_is_told_to() -> None:
    with pytest.raises(UnknownHeater, match=r'^no heater is called "x" in -; there is heater$'):
        heater_named(ONE, "x", file="-")


def test_only_heater_needs_no_name() -> None:
    assert only_heater(ONE) is ONE.heaters[0]


def test_several_heaters_want_a_name_and_none_is_none() -> None:
    with pytest.raises(UnknownHeater, match=r"^the layout has 2 heaters; name one: heater1 or heater2$"):
        only_heater(TWO)
    with pytest.raises(UnknownHeater, match=r"^nothing in this layout heats water$"):
        only_heater(NONE)
