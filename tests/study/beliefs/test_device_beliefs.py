import pytest
from conftest import system

import plumbnet
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.device_beliefs import past_the_stop, stopped_at

RELIEF = "relief: {pressure: 150 psi}"


def asked(runs: str, **parts: str) -> AskedHeater:
    report = plumbnet.check(system(runs, **{"heater": RELIEF, **parts}))
    return AskedHeater(report, report.heaters[0])


@pytest.mark.parametrize(
    ("device", "fields", "name"),
    [
        ("cv", "", "check-passed-over"),
        ("meter", "check: true", "meter-is-no-valve"),
        ("valve", "state: shut", "shut-valve-passed-over"),
        ("prv", "set: 50 psi", "reducer-passed-over"),
        ("prv", "set: 70 psi", "open-reducer-counted-on"),
    ],
)
def test_who_lets_the_water_past_what_stops_it_is_told_by_what_that_is(device: str, fields: str, name: str) -> None:
    hint = past_the_stop(asked(f"street -> {device} -> heater -> tap.hot", **{device: fields}))
    assert hint.name == name
    assert device in hint.text


def test_bypass_that_opens_past_the_limit_is_a_belief_of_its_own() -> None:
    hint = past_the_stop(asked("street -> prv -> heater -> tap.hot", street="pressure: 95 psi", prv="bypass: true"))
    assert hint.name == "bypass-needs-no-tank"
    assert "which is 95 psi, and the limit is 80 psi" in hint.text


def test_leak_beside_a_check_that_holds_is_told_before_that() -> None:
    hint = past_the_stop(asked("street -> cv -> cv2 -> heater -> tap.hot", cv="state: stuck_open"))
    assert hint.name == "leaking-check-is-open"
    assert "the water comes to cv2 as well" in hint.text


@pytest.mark.parametrize(
    ("device", "name"),
    [
        ("meter", "open-device-stops"),
        ("valve", "open-device-stops"),
        ("cv3", "open-device-stops"),
        ("prv", "bypass-overlooked"),
        ("pump", "pump-raises-pressure"),
        ("cv2", "stops-elsewhere"),
    ],
)
def test_who_has_it_stop_where_it_does_not_is_told_what_the_water_does_there(device: str, name: str) -> None:
    feed = "street -> meter -> prv -> valve -> cv3 -> tee -> heater -> tee2 -> tap.hot"
    one = asked(f"{feed}\ntee2 -> pump -> tee\ntee -> cv2 -> tap2.hot", prv="bypass: true", cv3="state: stuck_open")
    assert one.heater.verdict.value == "open"
    assert stopped_at(one, device).name == name


def test_pump_of_a_closed_heater_is_a_belief_as_well() -> None:
    one = asked("street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee")
    assert stopped_at(one, "pump").name == "pump-raises-pressure"


def test_device_behind_the_stop_is_not_come_to() -> None:
    assert stopped_at(asked("street -> meter -> cv -> heater -> tap.hot"), "meter").name == "stops-elsewhere"
