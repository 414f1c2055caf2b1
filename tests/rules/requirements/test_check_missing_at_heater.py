"""A check in the cold feed of a heater: which heaters are asked, what counts for one, and the words."""

from dataclasses import replace

import pytest
from conftest import system

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.facts.feed_facts import FeedFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile

NAME = "check-missing-at-heater"
MET, BROKEN, NOT_APPLICABLE = AnswerWord.MET, AnswerWord.BROKEN, AnswerWord.NOT_APPLICABLE
ASKING = ("as-nzs-3500", "en-806", "uk-2010")


def answered(drawn: System, rules: str) -> list[Answered]:
    facts = replace(plumbnet.check(drawn, rules=rules).facts, units="metric")
    return [one for one in answers_of(facts, profile(rules)) if one.rule.name == NAME]


def read(parts: str, *runs: str) -> System:
    listed = "".join(f"  - {run}\n" for run in runs)
    return read_system(f"plumbnet: 1\nunits: metric\nparts:\n{parts}runs:\n{listed}".encode(), file="house.yaml")


STREET = "  street: {kind: main, pressure: 3 bar}\n"
CYLINDER = (
    "  cylinder: {kind: storage_heater, volume: 150 L, setpoint: 60 degC, "
    "relief: {pressure: 7 bar, temperature: 95 degC}}\n"
)
TERRACE = read(
    STREET + "  meter: {kind: meter, check: true}\n  split: tee\n  basin: fixture\n"
    "  vessel: {kind: expansion_tank, volume: 18 L, precharge: 3 bar}\n" + CYLINDER,
    "street -> meter -> split -> cylinder -> basin.hot",
    "split -> basin.cold",
    "split -> vessel",
)
"""The meter has the check, a vessel holds the pressure; warm water may come to the cold side of the basin."""
VILLA = read(
    STREET + "  group: {kind: inlet_group, set: 2 bar, expansion_relief: 6 bar}\n  basin: fixture\n"
    "  vessel: {kind: expansion_tank, volume: 24 L, precharge: 2 bar}\n" + CYLINDER,
    "street -> group -> cylinder -> basin.hot",
    "group.cold -> basin.cold",
    "group.vessel -> vessel",
)
"""Cold water for the basin is taken off before the check of the group."""
FLAT = read(
    STREET + "  split: tee\n  basin: fixture\n  group: {kind: safety_group, set: 7 bar}\n" + CYLINDER,
    "street -> split -> group -> cylinder -> basin.hot",
    "split -> basin.cold",
)
"""A safety group before the cylinder."""


WARM_BASIN = "no check in the cold feed of cylinder keeps its water from coming back to basin; the rules ask for one."


@pytest.mark.parametrize("rules", ASKING)
def test_three_buildings_come_out_as_an_inspector_has_them(rules: str) -> None:
    told = [[(one.word, one.text) for one in answered(drawn, rules)] for drawn in (TERRACE, VILLA, FLAT)]
    assert told == [
        [(BROKEN, WARM_BASIN)],
        [(MET, "group/check in its cold feed")],
        [(MET, "group/check in its cold feed")],
    ]


def test_north_american_codes_ask_for_none() -> None:
    for rules in ("general", "ipc-2021", "irc-2024", "upc-2024", "npc-2020", "ontario-2024", "us-boiler"):
        assert [one.text for one in answered(TERRACE, rules)] == ["the rules do not ask for it"]


def test_words() -> None:
    report = plumbnet.check(read_system(REQUIREMENTS[NAME].bad.encode(), file="bad.yaml"))
    (one,) = (found for found in report.findings if found.name == NAME)
    assert (one.severity, one.parts) == (Severity.ERROR, ("heater",))
    assert (
        one.text
        == "no check in the cold feed of heater keeps its water from coming back to sink; the rules ask for one."
    )
    assert one.advice == "Fit a check in the cold feed of heater alone, and a control of expansion between the two."


@pytest.mark.parametrize(
    ("runs", "parts", "why"),
    [
        ("street -> tankless -> tap.hot", {}, "it fires only while water is drawn"),
        ("street -> heater -> tap.hot", {"heater": "volume: 9 L"}, "heaters up to 10 L are exempt"),
        ("street -> heater -> tap.hot", {"heater": "volume: 10 L"}, "heaters up to 10 L are exempt"),
        ("cistern -> heater -> tap.hot", {}, "its water leaves to the open air at cistern, and not to the main"),
        ("street -> cv -> heater -> valve -> tap.hot", {}, ""),
        ("loop -> tee -> boiler -> pump -> emitter -> tee", {}, "people draw none of what it warms"),
        ("heater -> tap.hot", {}, "no water comes to it from any supply"),
    ],
)
def test_heaters_that_are_not_asked(runs: str, parts: dict[str, str], why: str) -> None:
    (one,) = answered(system(runs, **parts), "en-806")
    assert (one.word, one.text) == ((NOT_APPLICABLE, why) if why else (MET, "cv in its cold feed"))


def test_heater_just_above_the_exempt_volume_is_asked() -> None:
    (one,) = answered(system("street -> heater -> tap.hot", heater="volume: 10.1 L"), "en-806")
    assert one.word is BROKEN


def test_heater_behind_another_is_fed_through_it() -> None:
    first, second = answered(system("street -> cv -> heater1 -> heater2 -> tap.hot"), "en-806")
    assert (first.word, second.word, second.text) == (MET, NOT_APPLICABLE, "it is fed through heater1")


def test_open_heater_is_judged_by_the_supply_pipe_where_the_rules_allow_growth_there() -> None:
    (one,) = answered(system("street -> heater -> tap.hot"), "uk-2010")
    assert (one.word, one.text) == (NOT_APPLICABLE, "what goes back is judged by the supply pipe")
    (one,) = answered(system("street -> prv -> heater -> tap.hot"), "uk-2010")
    assert one.word is BROKEN


def test_nearest_place_is_named() -> None:
    facts = plumbnet.check(TERRACE, rules="en-806").facts
    elsewhere = replace(facts, feeds=(FeedFacts("cylinder", "yard", ("meter",)),))
    (one,) = REQUIREMENTS[NAME].breaches(elsewhere, profile("en-806"))
    assert " coming back to yard; " in one.text
