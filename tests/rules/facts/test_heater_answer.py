from dataclasses import replace

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.model.part import Role
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.limit_facts import ROUNDING_PA

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def heater(runs: str, **parts: str) -> HeaterFacts:
    return plumbnet.check(system(runs, **parts)).facts.heaters[0]


def test_heater_reaches_a_tank_that_its_water_can_push_into() -> None:
    assert heater(f"{CLOSED}\ntee -> tank").reaches_a_tank
    assert heater(f"{CLOSED}\ntee -> cv2 -> tank").reaches_a_tank
    assert not heater(f"{CLOSED}\ntank.in -> cv2 -> tee").reaches_a_tank
    assert not heater(CLOSED).reaches_a_tank


def test_waterlogged_tank_is_not_reached() -> None:
    assert not heater(f"{CLOSED}\ntee -> tank", tank="state: waterlogged").reaches_a_tank


def test_expansion_relief_valve_is_a_control_and_a_safety_relief_valve_is_none() -> None:
    assert heater(f"{CLOSED}\ntee -> spill").has_control
    assert not heater(CLOSED).has_control


def test_way_out_is_the_street_of_an_open_heater_and_nothing_for_a_closed_one() -> None:
    way = heater("street -> heater -> tap.hot").way_out
    assert way is not None
    assert way.outlet == "street"
    assert heater(CLOSED).way_out is None


def test_rungs_carry_the_role_and_the_way() -> None:
    ladder = heater(f"{CLOSED}\ntee -> tank\ntee -> spill").ladder
    assert [(rung.outlet, rung.role, rung.way) for rung in ladder] == [
        ("tank", Role.TANK, ("heater", "tee", "tank")),
        ("spill", Role.EXPANSION_RELIEF, ("heater", "tee", "spill")),
        ("relief", Role.SAFETY_RELIEF, ("heater", "relief")),
    ]


@pytest.mark.parametrize(
    ("settled_pa", "past"), [(80 * PSI, False), (80 * PSI + 1.0, False), (80 * PSI + 1.1, True), (None, False)]
)
def test_heater_is_past_its_limit_by_more_than_one_pascal(settled_pa: float | None, *, past: bool) -> None:
    assert replace(heater(CLOSED), limit_pa=80 * PSI, settled_pa=settled_pa).is_past_limit is past


@pytest.mark.parametrize(
    ("static_pa", "usual_pa", "highest"),
    [(4e5, 3e5, True), (4e5, 4e5 - 1.0, False), (4e5, None, False), (None, 3e5, False)],
)
def test_heater_is_at_its_highest_where_its_main_is_lower_as_a_rule(
    static_pa: float | None, usual_pa: float | None, *, highest: bool
) -> None:
    assert replace(heater(CLOSED), static_pa=static_pa, usual_pa=usual_pa).is_at_highest is highest


@pytest.mark.parametrize(("street", "bound"), [(60, 80), (80, 80), (95, 95)])
def test_heater_must_bear_its_limit_or_the_static_pressure_where_that_is_higher(street: int, bound: int) -> None:
    held = heater("street -> heater -> tap.hot", street=f"pressure: {street} psi").bound_pa
    assert held == pytest.approx(bound * PSI + ROUNDING_PA, abs=0.1)


def test_heater_that_no_water_reaches_must_bear_its_limit() -> None:
    dry = heater("tee -> heater -> tap.hot\nstreet -> tap2.cold")
    assert dry.bound_pa == dry.limit_pa + ROUNDING_PA
