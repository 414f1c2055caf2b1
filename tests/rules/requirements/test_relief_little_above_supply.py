"""Relief valves of water heaters held to a distance above what stands at them, where a code has one."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.finding import Finding
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.rule_profile import profile, profile_names

NAME = "relief-little-above-supply"
HOUSE = "street -> heater -> tap.hot"


def answers(runs: str, rules: str = "irc-2021", **parts: str) -> list[Answered]:
    report = plumbnet.check(system(runs, **parts), rules=rules)
    return [one for one in answers_of(report.facts, report.rules) if one.rule.name == NAME]


def finding(**parts: str) -> Finding:
    (answer,) = answers(HOUSE, **parts)
    assert answer.finding is not None
    return answer.finding


def test_set_stands_beside_the_supply_and_the_valve_stays() -> None:
    found = finding(street="pressure: 80 psi", heater="relief: {pressure: 100 psi, temperature: 210 degF}")
    assert (found.severity, found.parts) == ("warning", ("heater/relief",))
    assert found.text == (
        "heater/relief is set to 100 psi, less than 25 psi above the 80 psi that stand there with nothing heated."
    )
    assert found.advice == (
        "Lower the static pressure there to 75 psi or less, or have a valve of a higher set fitted, no higher than the "
        "heater is rated for; it is never left out."
    )
    assert found.clause == "IRC P2804.3 (from memory): set at least 25 psi (172 kPa) above the system pressure"
    assert not found.verified


@pytest.mark.parametrize(("set_psi", "word"), [("104.8", "broken"), ("104.9", "met"), ("105", "met"), ("106", "met")])
def test_bound_is_met_by_what_the_scales_make_of_it(set_psi: str, word: str) -> None:
    (one,) = answers(HOUSE, street="pressure: 80 psi", heater=f"relief: {{pressure: {set_psi} psi}}")
    assert one.word == word
    assert one.measured is not None
    assert one.measured.at_least


@pytest.mark.parametrize(
    ("runs", "parts", "text"),
    [
        ("loop -> boiler -> emitter", {"boiler": "relief: {pressure: 30 psi}"}, "it guards a heating circuit"),
        (
            HOUSE,
            {"street": "pressure: 120 psi", "heater": "relief: {pressure: 100 psi}"},
            "its supply holds it open, which is worse and told first",
        ),
        ("heater -> tap.hot", {"heater": "relief: {pressure: 100 psi}"}, "no water comes to it from any supply"),
    ],
)
def test_boilers_valve_one_that_runs_and_a_dry_one_are_not_meant(runs: str, parts: dict[str, str], text: str) -> None:
    (one,) = answers(runs, **parts)
    assert (one.word, one.text) == (AnswerWord.NOT_APPLICABLE, text)


def test_residential_code_alone_asks_for_it() -> None:
    assert {name for name in profile_names() if profile(name).relief_above_static} == {"irc-2021", "irc-2024"}
    (one,) = answers(HOUSE, "general", heater="relief: {pressure: 61 psi}")
    assert (one.word, one.text) == (AnswerWord.NOT_APPLICABLE, "the rules do not ask for it")
