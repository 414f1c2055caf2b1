from conftest import system

import plumbnet
from plumbnet.study.beliefs.asked_heater import AskedHeater, has_hidden_check, is_leaking, is_shut, reducing


def asked(runs: str, **parts: str) -> AskedHeater:
    report = plumbnet.check(system(runs, **parts))
    return AskedHeater(report, report.heaters[0])


def test_words_of_a_heater_are_those_of_its_analysis() -> None:
    one = asked("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
    assert one.says("few-degrees-do-not-matter").text.startswith("You took the growth for less than it is; ")
    assert "all of 0.839 gal" in one.says("few-degrees-do-not-matter").text
    assert one.stop == "cv"
    assert one.relief is not None
    assert "opens at 150 psi" in one.says_of("relief-overlooked", one.relief, relief="heater/relief").text


def test_pump_leak_and_lost_tank_are_found() -> None:
    looped = asked(
        "street -> cv -> tee1 -> cv2 -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee\ntee1 -> tank",
        cv="state: stuck_open",
    )
    assert looped.pump == "pump"
    assert looped.leak == "cv"
    assert looped.lost_tank is not None
    assert looped.lost_tank.stopped_by == ("cv2",)
    assert looped.control is None


def test_parts_are_asked_what_they_are() -> None:
    parts = system(
        "street -> meter -> prv -> valve -> cv -> cv2 -> pump -> heater -> tap.hot",
        meter="check: true",
        valve="state: shut",
        cv="state: stuck_open",
        pump="check: true",
    ).parts
    assert [name for name, part in parts.items() if has_hidden_check(part)] == ["meter"]
    assert [name for name, part in parts.items() if is_shut(part)] == ["valve"]
    assert [name for name, part in parts.items() if is_leaking(part)] == ["cv"]
    assert [name for name, part in parts.items() if reducing(part)] == ["prv"]
