"""A pump without a check is a pipe with a head: all that stands behind it may as well stand lower."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.quantity import PASCAL_PER_METRE
from plumbnet.rules.facts import HeaterFacts

RISE_M = 40.0 * PSI / PASCAL_PER_METRE
RELIEVED = "relief: {pressure: 150 psi}"


def answer(runs: str, **parts: str) -> HeaterFacts:
    (found,) = plumbnet.check(system(runs, **parts)).heaters
    return found


def alike(runs: str, *behind: str, **parts: str) -> HeaterFacts:
    """What is said of the heater beside a pump without a check, which is what is said with that much height instead."""
    parts = {"heater": RELIEVED} | parts
    pumped = answer(runs, booster="check: false", **parts)
    named = {name for name in behind if name in runs}
    low = {name: ", ".join(filter(None, (parts.get(name), f"elevation: {-RISE_M} m"))) for name in named}
    lowered = answer(runs.replace("booster", "tee9"), **(parts | low))
    assert (pumped.verdict, pumped.stopped_by.sets) == (lowered.verdict, lowered.stopped_by.sets)
    assert pumped.closes_if_shut == lowered.closes_if_shut
    for one, other in (
        (pumped.static_pa, lowered.static_pa),
        (pumped.limit_pa, lowered.limit_pa),
        (pumped.settled_pa, lowered.settled_pa),
    ):
        assert one == (None if other is None else pytest.approx(other, rel=1e-9))
    assert pumped.short_m3 == pytest.approx(lowered.short_m3, rel=1e-6, abs=1e-12)
    out = 1 + next((at for at, rung in enumerate(pumped.ladder) if rung.role.is_way_out), len(pumped.ladder))
    assert opens(pumped)[:out] == opens(lowered)[:out]
    return pumped


def opens(facts: HeaterFacts) -> list[tuple[str, float]]:
    return [(rung.outlet, round(rung.opens_pa / PSI, 1)) for rung in facts.ladder]


def test_water_behind_the_pump_goes_back_to_the_street() -> None:
    found = alike("street -> booster -> heater -> tap.hot", "heater", "tap", heater="")
    assert (found.verdict, opens(found)) == ("open", [("street", 100.0)])


def test_water_before_a_pump_turned_round_is_pressed_back_through_it() -> None:
    found = alike("heater -> booster -> street", "street", street="pressure: 90 psi")
    assert found.verdict == "open"
    assert found.static_pa == pytest.approx(50.0 * PSI)
    assert opens(found) == [("street", 50.0), ("heater/relief", 150.0)]


def test_tank_before_the_pump_takes_water_at_its_charge_and_what_the_pump_holds() -> None:
    found = alike(
        "street -> cv -> tee -> tank\ntee -> booster -> heater -> tap.hot", "heater", "tap", tank="precharge: 70 psi"
    )
    assert opens(found) == [("tank", 110.0), ("heater/relief", 150.0)]


def test_valve_before_the_pump_closes_a_heater_behind_it_at_the_limit_there() -> None:
    # limit 135 psi at the heater: a spill set at 90 takes water below it, one set at 98 does not
    runs = "street -> valve -> tee -> spill\ntee -> booster -> heater"
    for set_psi, sets in ((90, ()), (98, (("valve",),))):
        found = alike(runs, "heater", spill=f"pressure: {set_psi} psi")
        assert found.closes_if_shut.sets == sets
        assert opens(found)[0] == ("street", 100.0)


BESIDE = """
street -> cv1 -> tee -> booster -> tee2 -> heater
tee -> cv2 -> tee3 -> spill
tee2 -> cv3 -> tee3
"""
"""A zone that checks join to the water on either side of the pump, so that no one height fits it."""


def test_outlet_beyond_a_gate_past_the_pump_opens_at_its_own_pressure() -> None:
    heater = {"heater": RELIEVED, "booster": "check: false"}
    found = answer(BESIDE, spill="pressure: 110 psi", **heater)
    assert (found.verdict, opens(found)) == ("controlled", [("spill", 110.0), ("heater/relief", 150.0)])
    found = answer(BESIDE.replace("tee2 -> heater", "tee2\nheater -> tee"), spill="pressure: 110 psi", **heater)
    assert opens(found) == [("spill", 70.0), ("heater/relief", 150.0)]
