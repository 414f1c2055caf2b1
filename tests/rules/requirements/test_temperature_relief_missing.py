"""Stores of hot drinking water whose relief valves relieve pressure only, and codes that ask for more or do not."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.finding import Finding

NAME = "temperature-relief-missing"


def found(runs: str, rules: str = "general", **parts: str) -> list[Finding]:
    return [one for one in plumbnet.check(system(runs, **parts), rules=rules).findings if one.name == NAME]


def test_heater_and_valve_are_named_and_what_is_there_stays() -> None:
    (finding,) = found("street -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
    assert finding.severity == "error"
    assert finding.parts == ("heater", "heater/relief")
    assert finding.text == "heater has no temperature relief: heater/relief relieves pressure only."
    assert finding.advice == (
        "Have a temperature and pressure relief valve fitted to its tapping, or one for temperature besides, with "
        "nothing between; if the valve there is a combined one, write its temperature."
    )


def test_second_valve_that_opens_by_temperature_is_enough() -> None:
    runs = "street -> tee -> heater -> tap.hot\nheater.relief -> relief\ntee -> relief2"
    one, other = "kind: relief_valve, pressure: 150 psi", "kind: relief_valve, pressure: 150 psi, temperature: 210 degF"
    assert found(runs, relief=one, relief2=other) == []
    assert len(found(runs, relief=one, relief2=one)) == 1


@pytest.mark.parametrize(
    ("runs", "parts"),
    [
        ("street -> tankless -> tap.hot", {"tankless": "relief: {pressure: 150 psi}"}),
        ("loop -> boiler -> emitter", {"boiler": "relief: {pressure: 30 psi}"}),
        ("cistern -> heater -> tap.hot\nheater.return -> vent", {"heater": "relief: {pressure: 150 psi}"}),
        ("street -> heater -> tap.hot", {}),
    ],
)
def test_flow_heater_boiler_vented_store_and_one_without_any_valve_are_not_asked(
    runs: str, parts: dict[str, str]
) -> None:
    assert found(runs, **parts) == []


@pytest.mark.parametrize(
    ("rules", "asked"),
    [
        ("general", True), ("ipc-2021", True), ("irc-2021", True), ("upc-2018", True), ("upc-2024", True),
        ("npc-2020", True), ("uk-2010", True), ("as-nzs-3500", True), ("en-806", False), ("en-12828", False),
        ("us-boiler", False),
    ],
)  # fmt: skip
def test_codes_ask_for_it_or_have_an_energy_cut_out_instead(rules: str, *, asked: bool) -> None:
    assert bool(found("street -> heater -> tap.hot", rules, heater="relief: {pressure: 130 psi}")) is asked
