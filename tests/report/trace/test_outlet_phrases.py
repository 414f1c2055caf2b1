"""What an outlet that water meets is told as, by itself."""

import pytest
from conftest import PSI, system
from usual import usual

import plumbnet
from plumbnet.layout.model.part import Outlet, Role
from plumbnet.report.trace.outlet_phrases import charge, lost, running, taking

FACTS = plumbnet.check(system("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="precharge: 50 psi")).facts


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
    outlet = Outlet("in", role, 0.0)
    assert taking(FACTS, outlet, 90 * PSI, bound_pa=80 * PSI) == words
    assert taking(FACTS, outlet, 90 * PSI, bound_pa=90 * PSI) == words.removesuffix(", past the limit")


def test_charge_is_wrong_beyond_the_tolerance_of_the_rules() -> None:
    assert charge(FACTS, "tank", tolerance_pa=2 * PSI) == (
        "; it is charged to 50 psi where the line stands at 60 psi: it is part full; charge it to 60 psi"
    )
    assert charge(FACTS, "tank", tolerance_pa=10 * PSI) == ""
    assert charge(FACTS, "heater", tolerance_pa=0.0) == ""


def test_what_takes_nothing_any_more_says_why() -> None:
    assert lost(usual("expansion_tank", state="waterlogged")) == "full: its air is gone, and it takes nothing"
    assert lost(usual("relief_valve", state="plugged")) == "plugged: it opens at no pressure, DANGER"
    for kind in ("expansion_tank", "relief_valve", "valve", "storage_heater"):
        assert lost(usual(kind)) == ""


def test_only_a_relief_valve_below_its_supply_runs() -> None:
    parts = {"street": "pressure: 120 psi", "spill": "pressure: 100 psi", "relief": "pressure: 130 psi"}
    facts = plumbnet.check(system("street -> tee -> heater -> tap.hot\ntee -> spill\ntee -> relief", **parts)).facts
    assert running(facts, "spill") == "runs all the time: 120 psi stands at it, above its set of 100 psi"
    assert running(facts, "relief") == running(facts, "tap") == ""
