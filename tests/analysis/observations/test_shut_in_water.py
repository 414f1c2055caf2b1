from conftest import system

import plumbnet
from plumbnet.layout.model.system import End
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.facts.ways_out import ShutInFacts


def found(runs: str, **parts: str) -> tuple[ShutInFacts, ...]:
    return plumbnet.check(system(runs, **parts)).facts.shut_in


def test_trapped_water_is_shut_in_from_the_check_on() -> None:
    (water,) = found("street -> cv -> heater -> tap.hot\nheater.relief -> relief")
    assert (water.verdict, water.heaters) == (Verdict.TRAPPED, ("heater",))
    assert water.ends == {
        End("cv", "out"),
        *(End("heater", port) for port in ("cold", "hot", "relief", "return")),
        End("tap", "hot"),
        End("relief", "in"),
    }


def test_open_and_controlled_water_is_not_shut_in() -> None:
    assert found("street -> valve -> heater -> tap.hot") == ()
    assert found("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="volume: 20 gal") == ()


def test_heaters_of_one_water_share_it_and_the_worst_verdict_counts() -> None:
    (water,) = found("street -> cv -> tee1 -> heater1 -> tee2 -> tap.hot\ntee1 -> heater2 -> tee2")
    assert (water.verdict, water.heaters) == (Verdict.SEALED, ("heater1", "heater2"))


def test_each_water_by_itself_is_told_in_the_order_of_the_file() -> None:
    runs = "street -> tee -> cv1 -> heater1 -> tap1.hot\ntee -> cv2 -> heater2 -> tap2.hot\nheater1.relief -> relief"
    assert [(water.verdict, water.heaters) for water in found(runs)] == [
        (Verdict.TRAPPED, ("heater1",)),
        (Verdict.SEALED, ("heater2",)),
    ]


def test_water_on_both_sides_of_a_pump_without_a_check_is_one() -> None:
    runs = "street -> cv -> heater1 -> booster -> heater2 -> booster2 -> tap.hot"
    (water,) = found(runs, booster="check: false")
    assert water.heaters == ("heater1", "heater2")
    assert {End("cv", "out"), End("booster2", "in")} <= water.ends
    assert End("booster2", "out") not in water.ends
