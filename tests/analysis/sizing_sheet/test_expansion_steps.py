"""The steps to what heated water grows by, as it is."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.required_tank.tank_task import Task, WarmedWater
from plumbnet.analysis.sizing_sheet.expansion_steps import growing, growing_section, mixing
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.layout.model.system import System
from plumbnet.network.network import network_of
from plumbnet.physics.fluids import glycol
from plumbnet.rules.rule_profile import profile


def first(drawn: System) -> tuple[Task, WarmedWater]:
    network = network_of(drawn)
    case = judge_of(network, profile("general")).case(network.heated[0])
    return case.tank.task, case.tank.waters[0]


def test_growth_is_that_of_the_verdict_whatever_the_method() -> None:
    drawn = system("street -> cv -> tee -> heater -> tap.hot", heater="sizing: uk-4-percent", tee="elevation: 50 ft")
    facts = plumbnet.check(drawn).heaters[0]
    assert growing(*first(drawn))[-1].value == pytest.approx(facts.expansion_m3, rel=1e-12)


def test_section_starts_with_the_volume() -> None:
    section = growing_section(*first(system("street -> cv -> heater -> tap.hot")))
    assert section.title == "What the water of heater grows by"
    assert [item.symbol for item in section.items] == ["V"]
    assert [step.symbol for step in section.steps] == ["v_1", "v_2", "e", "V_e"]


def test_mixture_is_worked_from_its_densities() -> None:
    drawn = system("street -> cv -> heater -> tap.hot", heater="antifreeze: {glycol: ethylene, share: 25 %}")
    task, water = first(drawn)
    cold, hot, grown = mixing(water)
    assert grown.value == pytest.approx(hot.value / cold.value - 1.0)
    assert grown.value == pytest.approx(growing(task, water)[0].value)
    assert {step.source for step in (cold, hot, grown)} == {glycol.GLYCOL_SOURCE}
    assert "0.25 parts of ethylene glycol by volume" in cold.name


def test_plain_water_needs_no_mixing() -> None:
    assert list(mixing(first(system("street -> cv -> heater -> tap.hot"))[1])) == []


def test_volume_is_called_what_it_is_and_told_where_it_comes_from() -> None:
    section = growing_section(*first(system("street -> cv -> heater -> tap.hot")))
    (item,) = section.items
    assert (item.name, item.dimension, item.origin) == ("heated water, cold", "volume", "the sum of the pieces listed")
    assert item.value == pytest.approx(50 * 231 * 0.0254**3)


def test_mixture_is_told_cold_then_hot_then_by_how_much_it_grows() -> None:
    drawn = system("street -> cv -> heater -> tap.hot", heater="antifreeze: {glycol: propylene, share: 30 %}")
    words = "0.3 parts of propylene glycol by volume"
    assert [(step.symbol, step.name, step.formula) for step in mixing(first(drawn)[1])] == [
        ("v_1", f"volume of the cold mixture, {words}", "v_mix(T_1)"),
        ("v_2", f"volume of the hot mixture, {words}", "v_mix(T_2)"),
        ("e_mix", "growth of the mixture", "v_2 / v_1 - 1"),
    ]
