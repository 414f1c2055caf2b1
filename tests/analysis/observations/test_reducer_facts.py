"""Pressure reducers: what stands before them and what stands behind."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts.device_facts import ReducerFacts

BEHIND = "street -> prv -> tee -> heater -> tap.hot"


def reducer(runs: str, **parts: str) -> ReducerFacts:
    (found,) = plumbnet.check(system(runs, **parts)).facts.reducers
    return found


def test_pressures_are_read_at_the_reducer() -> None:
    found = reducer(BEHIND, street="pressure: 70 psi", prv="elevation: 10 ft")
    assert found.set_pa == pytest.approx(50 * PSI)
    assert found.upstream_pa == pytest.approx((70 - 4.335) * PSI, rel=1e-3)


def test_reducer_with_no_water_before_it_has_no_pressure_there() -> None:
    found = reducer("tap.hot -> prv -> tap2.hot\nstreet -> heater")
    assert (found.upstream_pa, found.is_heated) == (None, False)


def test_water_of_a_heater_behind_pushes_at_it_and_of_one_before_does_not() -> None:
    assert reducer(BEHIND).is_heated
    assert not reducer("street -> tee -> heater -> tap.hot\ntee -> prv -> tap2.cold").is_heated


def test_tank_counts_behind_it_and_not_before_it() -> None:
    assert reducer(f"{BEHIND}\ntee -> tank").has_tank
    before = "street -> cv -> tee2 -> prv -> tee -> heater -> tap.hot\ntee2 -> tank"
    assert not reducer(before).has_tank
    assert not reducer(before, prv="bypass: true").has_tank
    assert not reducer(f"{BEHIND}\ntee -> tank", tank="state: waterlogged").has_tank


def test_lowest_expansion_relief_behind_is_named() -> None:
    found = reducer(f"{BEHIND}\ntee -> spill\ntee -> spill2", spill2="pressure: 90 psi")
    assert found.relief_set_pa == pytest.approx(90 * PSI)
    assert reducer(BEHIND).relief_set_pa is None


def test_pressure_behind_it_is_read_at_the_reducer_and_is_its_set_where_it_holds() -> None:
    found = reducer(BEHIND, street="pressure: 70 psi", prv="elevation: 10 ft")
    assert found.outlet_pa == pytest.approx(50 * PSI)
    assert found.passed_by == ()


def test_reducer_that_stands_above_its_set_is_told_with_the_way_past_it() -> None:
    found = reducer("street -> tee -> prv -> tee2 -> tap.hot\ntee2 -> pump -> tee\ntee -> heater")
    assert found.outlet_pa == pytest.approx(60 * PSI)
    assert found.passed_by == ("pump",)


def test_smaller_of_two_reducers_side_by_side_is_not_bypassed() -> None:
    runs = "street -> tee -> prv1 -> tee2 -> heater -> tap.hot\ntee -> prv2 -> tee2"
    facts = plumbnet.check(system(runs, prv1="set: 45 psi")).facts
    assert [one.passed_by for one in facts.reducers] == [(), ()]
    assert facts.reducers[0].outlet_pa == pytest.approx(50 * PSI)


def test_open_valve_past_a_reducer_below_whose_set_the_street_stands_bypasses_nothing() -> None:
    runs = "street -> tee -> prv -> tee2 -> heater -> tap.hot\ntee -> valve -> tee2"
    assert reducer(runs, street="pressure: 50 psi").passed_by == ()
    assert reducer(runs, street="pressure: 51 psi").passed_by == ("valve",)


def test_safety_relief_valve_and_tank_behind_it_are_no_expansion_relief() -> None:
    more = f"{BEHIND}\ntee -> relief\ntee -> tank"
    low = {"relief": "pressure: 60 psi"}
    assert reducer(more, **low).relief_set_pa is None
    assert reducer(f"{more}\ntee -> spill", **low).relief_set_pa == pytest.approx(100 * PSI)
