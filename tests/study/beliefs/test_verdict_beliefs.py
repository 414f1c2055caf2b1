import pytest
from conftest import system

import plumbnet
from plumbnet.rules.facts import Verdict
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.verdict_beliefs import verdict_belief

OPEN, CONTROLLED, TRAPPED, SEALED, ON_DEMAND = (
    Verdict.OPEN,
    Verdict.CONTROLLED,
    Verdict.TRAPPED,
    Verdict.SEALED,
    Verdict.ON_DEMAND,
)
RELIEF = "relief: {pressure: 150 psi}"
FREE = "street -> heater -> tap.hot"
CHECKED = "street -> cv -> heater -> tap.hot"
TANKED = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
BEFORE = "street -> tee -> cv -> heater -> tap.hot\ntee -> tank"
LOOPED = "street -> cv -> tee -> {0} -> tee2 -> tap.hot\ntee2 -> pump -> tee"


def told(runs: str, taken: Verdict, **parts: str) -> str:
    report = plumbnet.check(system(runs, **parts))
    (heater,) = report.heaters
    assert heater.verdict is not taken
    return verdict_belief(AskedHeater(report, heater), taken).name


@pytest.mark.parametrize(
    ("runs", "taken", "name", "parts"),
    [
        (FREE, TRAPPED, "way-out-overlooked", {}),
        (FREE, TRAPPED, "high-is-trapped", {"street": "pressure: 110 psi"}),
        ("street -> prv -> heater -> tap.hot", TRAPPED, "bypass-overlooked", {"prv": "bypass: true"}),
        (LOOPED.format("heater").replace("cv -> ", ""), TRAPPED, "pump-raises-pressure", {}),
        (FREE, CONTROLLED, "relief-takes-care", {}),
        (TANKED.replace("cv -> ", ""), CONTROLLED, "control-before-way-out", {}),
        (FREE, ON_DEMAND, "somebody-opens-a-tap", {}),
        (CHECKED, OPEN, "check-passed-over", {}),
        (CHECKED, CONTROLLED, "relief-takes-care", {}),
        ("street -> prv -> heater -> tap.hot", CONTROLLED, "reducer-caps-pressure", {"prv": "bypass: false"}),
        (BEFORE, CONTROLLED, "any-tank-anywhere", {}),
        (TANKED, CONTROLLED, "worn-tank-counted", {"tank": "state: waterlogged"}),
        (TANKED, CONTROLLED, "size-beats-charge", {"tank": "precharge: 20 psi"}),
        (TANKED, CONTROLLED, "few-degrees-do-not-matter", {"tank": "volume: 0.5 gal"}),
        (CHECKED, ON_DEMAND, "somebody-opens-a-tap", {}),
        (CHECKED, SEALED, "relief-overlooked", {}),
        (TANKED, TRAPPED, "control-overlooked", {}),
        (TANKED, SEALED, "control-overlooked", {}),
        (CHECKED, TRAPPED, "no-relief-there", {"heater": ""}),
        (CHECKED, CONTROLLED, "no-relief-there", {"heater": ""}),
    ],
)
def test_verdict_of_a_store_that_was_taken_for_another(
    runs: str, taken: Verdict, name: str, parts: dict[str, str]
) -> None:
    assert told(runs, taken, **{"heater": RELIEF, **parts}) == name


@pytest.mark.parametrize(
    ("runs", "taken", "name"),
    [
        ("street -> cv -> tankless -> tap.hot", TRAPPED, "fires-without-draw"),
        ("street -> cv -> tankless -> tap.hot", CONTROLLED, "fires-without-draw"),
        ("street -> tankless -> tap.hot", ON_DEMAND, "open-before-on-demand"),
        (LOOPED.format("tankless"), ON_DEMAND, "tankless-never"),
    ],
)
def test_verdict_of_a_tankless_heater_that_was_taken_for_another(runs: str, taken: Verdict, name: str) -> None:
    assert told(runs, taken, tankless=RELIEF) == name
