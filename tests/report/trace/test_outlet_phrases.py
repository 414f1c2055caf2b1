"""What an outlet that water meets is told as, by itself."""

from dataclasses import replace

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.water_walk.walk_steps import Refusing, Taking
from plumbnet.layout.model.part import Role
from plumbnet.report.trace.outlet_phrases import refusing, taking

FACTS = plumbnet.check(
    system("street -> cv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> spill", tank="precharge: 50 psi")
).facts
(TANK,) = FACTS.tanks
(SPILL,) = FACTS.expansion_reliefs


@pytest.mark.parametrize(
    ("role", "words"),
    [
        (Role.STREET, "takes back any amount once it stands above 90 psi: the way out, past the limit"),
        (Role.AIR, "open to the air, takes any amount above 90 psi: the way out, past the limit"),
        (Role.TANK, "takes water in against its air from 90 psi on, past the limit"),
        (Role.EXPANSION_RELIEF, "opens at 90 psi and lets the growth off to a drain, past the limit"),
        (Role.SAFETY_RELIEF, "opens at 90 psi: the last safety device, and no control"),
    ],
)
def test_outlet_past_the_limit_says_so_but_for_the_last_safety_device(role: Role, words: str) -> None:
    assert taking(FACTS, Taking(role, 90 * PSI, is_past_limit=True)) == words
    assert taking(FACTS, Taking(role, 90 * PSI, is_past_limit=False)) == words.removesuffix(", past the limit")


def test_tank_that_is_charged_wrong_says_to_what_and_what_would_be_right() -> None:
    found = Taking(Role.TANK, 60 * PSI, is_past_limit=False, wrong_charge=TANK)
    told = taking(FACTS, found)
    assert told.startswith("takes water in against its air")
    assert ": it is part full; " in told
    assert told.endswith("charge it to 60 psi")
    high = replace(found, wrong_charge=replace(TANK, precharge_pa=70 * PSI))
    assert "charged to 70 psi" in taking(FACTS, high)
    assert "takes nothing before" in taking(FACTS, high)
    assert taking(FACTS, high).endswith("charge it to 60 psi")


def test_relief_valve_that_runs_is_told_so_in_place_of_when_it_opens() -> None:
    found = Taking(Role.EXPANSION_RELIEF, 100 * PSI, is_past_limit=True, running=replace(SPILL, static_pa=120 * PSI))
    assert taking(FACTS, found).startswith("runs all the time: 120 psi")
    assert taking(FACTS, found).endswith("above its set of 100 psi")


def test_outlet_that_takes_none_of_the_water_says_what_comes_before() -> None:
    assert refusing(Refusing("street")).endswith(" street takes any amount before")
    assert refusing(Refusing(None)) == "takes none of it: a reducer on the way shuts before"
