"""Expansion tanks whose charge can be read, and those behind no valve, in buildings of several sorts."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.rule_profile import profile, profile_names

NAME = "tank-cannot-be-served"
PARTED = "it can be parted by valves from all that would have to be let down with it"


def answer(runs: str, rules: str = "general", **parts: str) -> Answered:
    report = plumbnet.check(system(runs, **parts), rules=rules)
    (one,) = (one for one in answers_of(report.facts, report.rules) if one.rule.name == NAME)
    return one


CIRCUIT = "loop -> tee -> boiler -> valve2 -> pump -> emitter -> tee"


def test_circuit_that_must_be_let_down_is_told_and_the_valve_is_locked() -> None:
    found = answer(f"{CIRCUIT}\ntee -> tank").finding
    assert found is not None
    assert (found.severity, found.parts) == ("warning", ("tank", "boiler", "emitter"))
    assert found.text == "No valve parts tank from boiler and emitter: to read its charge the circuit is let down."
    assert found.advice == "Have a valve fitted before tank, locked open, with a drain between the two."


def test_second_supply_past_the_stop_is_told_and_no_valve_comes_between_heater_and_tank() -> None:
    found = answer("street -> valve -> cv -> tee -> heater -> tap.hot\nstreet2 -> cv2 -> tee -> tank").finding
    assert found is not None
    assert found.parts == ("tank", "street2")
    assert found.text == "No valve parts tank from street2: its charge cannot be read with no water behind it."
    assert (
        found.advice
        == "Have a valve fitted in the supply, before tank and the heaters that it serves, not between them."
    )


@pytest.mark.parametrize(
    "runs",
    [
        # a house with a stop; one whose tank has a valve of its own
        "street -> valve -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        "street -> cv -> tee -> heater -> tap.hot\ntee -> valve -> tank",
        # flats: each has its stop, the house none
        "street -> tee -> valve -> cv -> tee2 -> heater -> tap.hot\ntee2 -> tank\ntee -> valve2 -> tap2.cold",
        # a well: its pump is switched off
        "well -> tee -> heater -> tap.hot\ntee -> tank",
        # a circuit with a cap valve
        f"{CIRCUIT}\ntee -> valve -> tank",
    ],
)
def test_tank_of_an_ordinary_building_is_met(runs: str) -> None:
    one = answer(runs)
    assert (one.word, one.text) == (AnswerWord.MET, PARTED)


@pytest.mark.parametrize("state", ["locked: true", "state: shut"])
def test_locked_valve_and_one_that_is_shut_part_a_tank_as_well(state: str) -> None:
    assert answer(f"{CIRCUIT}\ntee -> valve -> tank", valve=state).word is AnswerWord.MET


@pytest.mark.parametrize("rules", ["en-12828", "us-boiler", "uk-2010", "en-806", "as-nzs-3500"])
def test_advice_of_codes_that_want_no_valve_before_a_tank_contradicts_none(rules: str) -> None:
    done = f"{CIRCUIT}\ntee -> valve -> tank"
    names = {one.name for one in plumbnet.check(system(done, valve="locked: true"), rules=rules).findings}
    assert not names & {"valve-before-tank", NAME}


@pytest.mark.parametrize(
    "runs",
    [
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        # valves at branches say nothing of the stop in the supply
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> valve -> tap2.cold",
        "loop -> tee -> boiler -> pump -> emitter -> tee\ntee -> tank",
    ],
)
def test_sketch_without_stops_does_not_say(runs: str) -> None:
    one = answer(runs)
    assert (one.word, one.text) == (AnswerWord.UNTOLD, "by which valve it is parted from its supply (none is drawn)")


def test_way_round_the_stop_is_told() -> None:
    runs = "street -> tee -> valve -> tee2 -> heater -> tap.hot\ntee -> meter -> tee2\ntee2 -> tank"
    assert answer(runs).word is AnswerWord.BROKEN


def test_dry_tank_is_not_asked_and_a_profile_may_leave_it_out() -> None:
    one = answer("heater -> tee -> tap.hot\ntee -> tank")
    assert (one.word, one.text) == (AnswerWord.NOT_APPLICABLE, "no water comes to it from any supply")
    chosen = profile("general")
    off = chosen.model_copy(update={"tank_service": chosen.tank_service.model_copy(update={"value": "not-asked"})})
    facts = plumbnet.check(system(f"{CIRCUIT}\ntee -> tank")).facts
    (told,) = (one for one in answers_of(facts, off) if one.rule.name == NAME)
    assert told.text == "the rules do not ask for it"


def test_every_code_takes_it_for_common_practice() -> None:
    assert all(profile(name).tank_service.clause.startswith("common practice") for name in profile_names())
