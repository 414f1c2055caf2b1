"""Stores of hot drinking water held to a temperature, and those that are not."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.rule_profile import profile, profile_names

NAME = "stored-too-cool"
HOUSE = "street -> heater -> tap.hot"
COOL = "setpoint: 50 degC"


def answers(runs: str, rules: str = "uk-2010", **parts: str) -> dict[str, Answered]:
    report = plumbnet.check(system(runs, **parts), rules=rules)
    told = [one for one in answers_of(report.facts, report.rules) if one.rule.name == NAME]
    return {one.parts[0] if one.parts else "": one for one in told}


def test_advice_sets_it_higher_and_spares_whoever_washes() -> None:
    found = answers(HOUSE, heater=COOL)["heater"].finding
    assert found is not None
    assert (found.severity, found.parts, found.verified) == ("warning", ("heater",), False)
    assert found.text == "heater stores hot water at 122 degF, below 140 degF."
    assert found.advice == (
        "Set it to 140 degF or more, and have a mixing valve wherever that would scald whoever washes; or let all its "
        "water pass a store that is as hot."
    )


@pytest.mark.parametrize(("setpoint", "word"), [("59.4 degC", "broken"), ("59.6 degC", "met"), ("140 degF", "met")])
def test_bound_leaves_half_a_kelvin_to_the_scales(setpoint: str, word: str) -> None:
    assert answers(HOUSE, heater=f"setpoint: {setpoint}")["heater"].word == word


def test_store_that_only_warms_the_water_of_a_hotter_one_is_not_held_to_it() -> None:
    runs = "street -> heater1 -> heater2 -> tap.hot"
    told = answers(runs, heater1=COOL, heater2="setpoint: 62 degC")
    assert told["heater1"].word is AnswerWord.NOT_APPLICABLE
    assert told["heater1"].text == "all that is drawn from it passes a store set to 144 degF"
    assert told["heater2"].word is AnswerWord.MET
    assert answers(runs, heater1=COOL, heater2="setpoint: 55 degC")["heater1"].word is AnswerWord.BROKEN


def test_one_tap_before_the_hotter_store_is_enough_to_hold_it_to_it() -> None:
    runs = "street -> heater1 -> tee -> heater2 -> tap.hot\ntee -> tap2.hot"
    assert answers(runs, heater1=COOL)["heater1"].word is AnswerWord.BROKEN


def test_flow_heater_behind_it_stores_nothing() -> None:
    assert answers("street -> heater -> tankless -> tap.hot", heater=COOL)["heater"].word is AnswerWord.BROKEN


def test_store_heated_elsewhere_is_asked_for_there() -> None:
    runs = "street -> heater -> store -> tap.hot"
    told = answers(runs)
    assert {name: one.word for name, one in told.items()} == {
        "heater": AnswerWord.MET,
        "store": AnswerWord.NOT_APPLICABLE,
    }
    assert told["store"].text == "it is heated elsewhere, and asked for there"


@pytest.mark.parametrize("rules", ["npc-2020", "npc-2025", "ontario-2024"])
def test_code_that_names_electric_heaters_asks_which_it_is(rules: str) -> None:
    told = [
        answers(HOUSE, rules, heater=f"{COOL}{more}")["heater"]
        for more in (", electric: true", ", electric: false", "")
    ]
    assert [one.word for one in told] == [AnswerWord.BROKEN, AnswerWord.NOT_APPLICABLE, AnswerWord.UNTOLD]
    assert told[1].text == "electricity does not heat it, and the rules name no other"
    assert told[2].text == "whether electricity heats it (electric), since the rules name no other"
    assert answers(HOUSE, rules)["heater"].word is AnswerWord.MET


def test_clause_that_was_read_makes_an_error_of_it() -> None:
    found = answers(HOUSE, "ontario-2024", heater=f"{COOL}, electric: true")["heater"].finding
    assert found is not None
    assert (found.severity, found.verified) == ("error", True)
    assert "9.31.6.1.(2)" in found.clause


def test_codes_that_ask_for_it_are_few() -> None:
    asked = {name for name in profile_names() if profile(name).least_stored}
    assert asked == {"uk-2010", "as-nzs-3500", "npc-2020", "npc-2025", "ontario-2024"}
    assert answers(HOUSE, "general", heater=COOL)[""].text == "the rules do not ask for it"


def test_store_in_a_heating_circuit_is_not_meant() -> None:
    (one,) = answers("loop -> tee -> heater -> pump -> emitter -> tee", heater=COOL).values()
    assert one.word is AnswerWord.NOT_APPLICABLE
    assert one.text == "nobody drinks its water: it stands in a heating circuit"
