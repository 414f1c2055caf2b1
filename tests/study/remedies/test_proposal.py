"""The layout in which a heater is cured."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.proposal import with_remedy, with_tank

HOUSE = system("street -> cv -> tee -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")


def test_trapped_heater_gets_a_tank_and_is_controlled() -> None:
    found = with_tank(plumbnet.check(HOUSE), "heater")
    assert found is not None
    assert found.remedy.effort is Effort.ADD
    assert found.after.heaters[0].verdict is Verdict.CONTROLLED
    assert "heater-tank" in found.after.system.parts


def test_another_remedy_is_proposed_where_no_tank_is_added() -> None:
    small = system("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="volume: 2 gal, precharge: 20 psi")
    report = plumbnet.check(small)
    found = {"heater": tuple(one for one in plumbnet.remedies(report)["heater"] if one.effort is not Effort.ADD)}
    proposal = with_tank(report, "heater", found)
    assert proposal is not None
    assert proposal.remedy == found["heater"][0]


def test_open_heater_needs_none() -> None:
    assert with_tank(plumbnet.check(system("street -> tee -> heater -> tap.hot")), "heater") is None


def test_remedy_of_another_layout_is_a_mistake_of_the_caller() -> None:
    remedy = plumbnet.remedies(plumbnet.check(HOUSE))["heater"][0]
    other = plumbnet.check(system("street -> tap.cold"))
    with pytest.raises(ValueError, match="made for another layout"):
        with_remedy(other, remedy)
