"""What a gate does to the water that comes to it, as the walk meets it; pressures in psi at the heater."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import Direction, GateAnswer, Gated, GateMet

NO_CHECK = {"booster": "check: false"}
PRV = "street -> prv -> heater -> tap.hot"


def met(gate: str, runs: str, **parts: str) -> GateMet:
    """The first gate of a part, as the walk from the heater meets it."""
    report = plumbnet.check(system(runs, **parts))
    steps = water_walk(report, report.heaters[0]).steps
    (found,) = [step.met for step in steps if step.part == gate]
    assert isinstance(found, Gated)
    return found.gates[0]


@pytest.mark.parametrize(
    ("gate", "runs", "parts", "direction", "answer"),
    [
        ("valve", "street -> valve -> heater -> tap.hot", {"valve": "state: shut"}, Direction.BACK, GateAnswer.SHUT),
        ("cv", "street -> cv -> heater -> tap.hot", {}, Direction.BACK, GateAnswer.ONE_WAY),
        ("prv", PRV, {}, Direction.BYPASS, GateAnswer.ONE_WAY),
        ("prv", PRV, {"prv": "set: 70 psi"}, Direction.BYPASS, GateAnswer.OPEN_NOW),
        ("cv2", "street -> cv -> heater -> cv2 -> tap.hot", {}, Direction.FORWARD, GateAnswer.PASSES),
        ("booster", "street -> booster -> heater -> tap.hot", NO_CHECK, Direction.BACK, GateAnswer.PASSES),
        ("prv", "street -> heater -> prv -> tap.hot", {}, Direction.FORWARD, GateAnswer.SET_STANDS_BEYOND),
        ("prv", "street -> heater -> prv -> tap.hot", {"prv": "set: 61 psi"}, Direction.FORWARD, GateAnswer.PASSES),
    ],
)
def test_gate_that_passes_at_once_or_never_has_no_pressure(
    gate: str, runs: str, parts: dict[str, str], direction: Direction, answer: GateAnswer
) -> None:
    found = met(gate, runs, **parts)
    assert (found.direction, found.answer, found.opens_pa, found.before) == (direction, answer, None, "")


@pytest.mark.parametrize(
    ("street", "opens", "answer"),
    [(60, 60, GateAnswer.PASSES_ABOVE), (80, 80, GateAnswer.PASSES_ABOVE), (81, 81, GateAnswer.PASSES_PAST_LIMIT)],
)
def test_bypass_opens_above_the_street_which_may_be_past_the_limit(street: int, opens: int, answer: GateAnswer) -> None:
    found = met("prv", PRV, street=f"pressure: {street} psi", prv="bypass: true")
    assert (found.direction, found.answer, found.before) == (Direction.BYPASS, answer, "")
    assert found.opens_pa == pytest.approx(opens * PSI)


def test_gate_that_a_way_out_outruns_names_it() -> None:
    """The vent takes any amount at 17.3 psi, long before the bypass of the reducer opens."""
    runs = "street -> prv -> tee -> heater -> tap.hot\ntee -> vent"
    found = met("prv", runs, prv="set: 10 psi, bypass: true")
    assert (found.direction, found.answer, found.before) == (Direction.BYPASS, GateAnswer.OUTRUN, "vent")
    assert found.opens_pa == pytest.approx(60 * PSI)


def test_pressure_is_read_at_the_heater() -> None:
    """30 ft of water is 13 psi."""
    found = met("prv", PRV, prv="bypass: true", heater="elevation: 30 ft")
    assert found.opens_pa is not None
    assert found.opens_pa / PSI == pytest.approx(47.0, abs=0.05)


def test_gate_leads_toward_its_connection() -> None:
    assert met("cv", "street -> cv -> heater -> tap.hot").toward == "in"
