import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.model.part import Role
from plumbnet.rules.facts import ROUNDING_PA, Facts, HeaterFacts, TankFacts, Verdict

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def facts(runs: str, **parts: str) -> Facts:
    return plumbnet.check(system(runs, **parts)).facts


def heater(runs: str, **parts: str) -> HeaterFacts:
    return facts(runs, **parts).heaters[0]


def test_the_five_words_are_as_promised() -> None:
    assert [verdict.value for verdict in Verdict] == ["open", "controlled", "trapped", "sealed", "on-demand"]


def test_heater_reaches_a_tank_that_its_water_can_push_into() -> None:
    assert heater(f"{CLOSED}\ntee -> tank").reaches_a_tank
    assert heater(f"{CLOSED}\ntee -> cv2 -> tank").reaches_a_tank
    assert not heater(f"{CLOSED}\ntank.in -> cv2 -> tee").reaches_a_tank
    assert not heater(CLOSED).reaches_a_tank


def test_waterlogged_tank_is_not_reached() -> None:
    assert not heater(f"{CLOSED}\ntee -> tank", tank="state: waterlogged").reaches_a_tank


def test_rungs_carry_the_role_and_the_way() -> None:
    ladder = heater(f"{CLOSED}\ntee -> tank\ntee -> spill").ladder
    assert [(rung.outlet, rung.role, rung.way) for rung in ladder] == [
        ("tank", Role.TANK, ("heater", "tee", "tank")),
        ("spill", Role.EXPANSION_RELIEF, ("heater", "tee", "spill")),
        ("relief", Role.SAFETY_RELIEF, ("heater", "relief")),
    ]


@pytest.mark.parametrize(
    ("static_pa", "cut_in_pa", "serves"), [(3e5, 2e5, True), (3e5, 3e5, False), (3e5, None, False), (None, 2e5, False)]
)
def test_tank_serves_a_pump_where_the_pressure_is_let_fall(
    static_pa: float | None, cut_in_pa: float | None, *, serves: bool
) -> None:
    tank = TankFacts("tank", 2e5, static_pa, cut_in_pa, is_waterlogged=False, reached=True, on_hot_side=False)
    assert tank.serves_a_pump == serves


def test_quantities_are_told_in_the_units_of_the_report() -> None:
    us = facts(CLOSED)
    assert us.pressure(60 * PSI) == "60 psi"
    assert us.volume(0.003785411784) == "1 gal"
    assert us.temperature(333.15) == "140 degF"
    assert us.power(40_000 * 1055.05585262 / 3600) == "40,000 Btu/h"
    metric = plumbnet.check(system(CLOSED), units="metric").facts
    assert metric.pressure(60 * PSI) == "414 kPa"
    assert metric.volume(0.0189) == "18.9 L"
    assert metric.temperature(333.15) == "60 degC"
    assert metric.power(11_700.0) == "11.7 kW"


def test_facts_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        facts(CLOSED).heaters[0].verdict = Verdict.OPEN  # type: ignore[misc]  # that it cannot be set is the test


@pytest.mark.parametrize(("street", "bound"), [(60, 80), (80, 80), (95, 95)])
def test_heater_must_bear_its_limit_or_the_static_pressure_where_that_is_higher(street: int, bound: int) -> None:
    held = heater("street -> heater -> tap.hot", street=f"pressure: {street} psi").bound_pa
    assert held == pytest.approx(bound * PSI + ROUNDING_PA, abs=0.1)


def test_heater_that_no_water_reaches_must_bear_its_limit() -> None:
    dry = heater("tee -> heater -> tap.hot\nstreet -> tap2.cold")
    assert dry.bound_pa == dry.limit_pa + ROUNDING_PA
