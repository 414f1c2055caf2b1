"""A pump without a check is a pipe with a head: all that stands behind it may as well stand lower."""

import pytest
from conftest import PSI, drawn, system

import plumbnet
from plumbnet.layout.units.units import PASCAL_PER_METRE
from plumbnet.network.piping.piping import Way
from plumbnet.rules.facts.heater_answer import HeaterFacts

RISE_M = 40.0 * PSI / PASCAL_PER_METRE
OPEN = "check: false"
RELIEVED = "relief: {pressure: 150 psi}"


def answer(runs: str, **parts: str) -> HeaterFacts:
    (found,) = plumbnet.check(system(runs, **parts)).heaters
    return found


def alike(runs: str, *behind: str, **parts: str) -> HeaterFacts:
    """What is said of the heater beside a pump without a check, which is what is said with that much height instead."""
    parts = {"heater": RELIEVED} | parts
    pumped = answer(runs, booster=OPEN, **parts)
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
    heater = {"heater": RELIEVED, "booster": OPEN}
    found = answer(BESIDE, spill="pressure: 110 psi", **heater)
    assert (found.verdict, opens(found)) == ("controlled", [("spill", 110.0), ("heater/relief", 150.0)])
    found = answer(BESIDE.replace("tee2 -> heater", "tee2\nheater -> tee"), spill="pressure: 110 psi", **heater)
    assert opens(found) == [("spill", 70.0), ("heater/relief", 150.0)]


def test_water_on_both_sides_of_the_pump_stands_level() -> None:
    d = drawn("street -> tee -> booster -> tee2 -> cv -> tee3 -> heater", booster=OPEN)
    static_pa = d.network.standing.static_pa
    assert static_pa[d.zone("tee")] == static_pa[d.zone("tee2")] == static_pa[d.zone("tee3")] == 60.0 * PSI
    for rise in (33.3, 123.4, 333.3):  # and to the last bit
        d = drawn("street -> tee -> booster -> tee2", street="pressure: 61.7 psi", booster=f"{OPEN}, rise: {rise} psi")
        assert d.network.standing.at(d.zone("tee")) == d.network.standing.at(d.zone("tee2"))


def test_first_port_of_all_that_is_joined_keeps_the_datum() -> None:
    d = drawn("street -> tee -> booster -> tee2 -> cv -> tee3 -> heater", booster=OPEN)
    assert [round(d.lift_pa(place) / PSI, 6) for place in ("tee", "tee2", "heater")] == [0.0, -40.0, -40.0]
    assert d.lift_pa("booster.in") == 0.0
    assert d.lift_pa("booster.out") == pytest.approx(-40.0 * PSI)


def test_reducer_behind_the_pump_shuts_at_its_own_set() -> None:
    d = drawn("street -> booster -> tee -> prv -> heater", booster=OPEN, prv="set: 70 psi")
    assert d.static("heater") == pytest.approx(70.0)
    (gate,) = (gate for gate in d.network.piping.gates if gate.part == "prv")
    assert gate.forward is not None
    assert gate.forward.below_pa == pytest.approx((70.0 - 40.0) * PSI)


def test_well_behind_which_a_pump_stands_falls_as_far_as_the_well() -> None:
    d = drawn("well -> booster -> heater", booster=OPEN)
    cut_in_pa = d.network.standing.cut_in_pa[d.zone("heater")]
    assert cut_in_pa is not None
    assert (cut_in_pa - d.lift_pa("heater")) / PSI == pytest.approx(70.0)


def test_pump_with_a_check_leaves_the_datum_as_it_is() -> None:
    d = drawn("street -> booster -> heater")
    assert d.lift_pa("heater") == 0.0
    assert d.static("heater") == pytest.approx(100.0)


def test_pump_in_water_that_no_supply_reaches_leaves_the_datum_as_it_is() -> None:
    assert drawn("heater -> booster -> tee -> tap.hot", booster=OPEN).lift_pa("tee") == 0.0


@pytest.mark.parametrize("runs", [BESIDE, "tee2 -> tee4" + BESIDE])
def test_gate_past_the_pump_says_by_how_much_its_far_side_stands_lower(runs: str) -> None:
    d = drawn(runs, booster=OPEN)
    ways = {gate.part: gate.forward for gate in d.network.piping.gates}
    assert ways["cv2"] == Way()
    past = ways["cv3"]
    assert past is not None
    assert round(past.opens_pa / PSI, 6) == -40.0


def test_way_back_past_the_pump_leads_up_by_as_much_as_the_way_there_leads_down() -> None:
    d = drawn(BESIDE.replace("cv3", "prv"), booster=OPEN, prv="bypass: true, set: 90 psi")
    (gate,) = (gate for gate in d.network.piping.gates if gate.part == "prv")
    assert gate.forward is not None
    assert gate.backward is not None
    for way, higher in ((gate.forward, -40.0), (gate.backward, 40.0)):
        assert round(way.opens_pa / PSI, 6) == higher
    assert gate.forward.below_pa == pytest.approx(90.0 * PSI)


def test_gates_behind_one_past_the_pump_open_at_their_own_pressure_too() -> None:
    runs = BESIDE.replace("tee3 -> spill", "tee3 -> cv4 -> tee4 -> spill")
    assert drawn(runs, booster=OPEN, spill="pressure: 110 psi").ladder("heater") == [("spill", 110.0)]


def test_reducer_before_a_gate_past_the_pump_shuts_at_its_own_set() -> None:
    # tee2 of 100 psi > prv > tee5 > upper > tee3, or back through the pump to tee, 40 lower, and on to tee3
    runs = BESIDE.replace("tee2 -> cv3 -> tee3", "tee2 -> prv -> tee5 -> upper -> tee3")
    upper = "kind: check_valve"
    for set_psi, ladder in ((120, [("spill", 110.0)]), (105, [("spill", 150.0)])):
        d = drawn(runs, booster=OPEN, prv=f"set: {set_psi} psi", upper=upper, spill="pressure: 110 psi")
        assert d.ladder("heater") == ladder
