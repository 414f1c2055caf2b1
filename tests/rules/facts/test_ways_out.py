"""Outlets, and water that has none below its limit."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.model.part import Role
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.verdict_words import Verdict


def facts(runs: str, **parts: str) -> Facts:
    return plumbnet.check(system(runs, **parts)).facts


def test_outlets_are_told_with_what_opens_them() -> None:
    found = facts("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief").outlets
    told = {(one.name, one.role): one.opens_pa / PSI for one in found}
    assert told[("relief", Role.SAFETY_RELIEF)] == pytest.approx(150)
    assert told[("street", Role.STREET)] == pytest.approx(60)


def test_water_behind_a_check_is_shut_in_and_that_before_it_is_not() -> None:
    (water,) = facts("street -> cv -> heater -> tap.hot").shut_in
    assert water.heaters == ("heater",)
    assert water.verdict in {Verdict.TRAPPED, Verdict.SEALED}
    parts = {end.part for end in water.ends}
    assert {"heater", "tap"} <= parts
    assert "street" not in parts
    assert facts("street -> valve -> heater -> tap.hot").shut_in == ()
