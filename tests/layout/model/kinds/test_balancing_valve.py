"""The kind "balancing_valve"."""

from conftest import system
from usual import usual

from plumbnet.api import check
from plumbnet.layout.model.event import Event, Extremes, Sort
from plumbnet.layout.model.part import Free, Shut

EXTREMES = Extremes(limit_pa=551_580.0, relief_k=372.0)


def test_balancing_valve_closes_nothing_however_far_it_throttles() -> None:
    setter = usual("balancing_valve")
    assert list(setter.passages()) == [Free("in", "out")]
    assert not setter.is_check


def test_balancing_valve_may_be_shut_by_hand_unless_its_setting_is_locked() -> None:
    assert list(usual("balancing_valve", state="shut").passages()) == [Shut("in", "out")]
    assert list(usual("balancing_valve").events(EXTREMES)) == [Event("shut", "close", sort=Sort.TURNED)]
    assert list(usual("balancing_valve", locked=True).events(EXTREMES)) == []


def test_shut_balancing_valve_is_drawn_as_a_shut_valve() -> None:
    assert usual("balancing_valve").drawn_as() == "balancing_valve"
    assert usual("balancing_valve", state="shut").drawn_as() == "shut_valve"


# street -- setter -- heater -- tap
def test_balancing_valve_in_the_feed_is_what_closes_the_heater_if_shut() -> None:
    (heater,) = check(system("street -> setter -> heater -> tap.hot", setter="kind: balancing_valve")).heaters
    assert heater.verdict == "open"
    assert heater.closes_if_shut.sets == (("setter",),)
