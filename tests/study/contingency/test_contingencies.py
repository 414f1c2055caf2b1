"""Every single credible event of a layout, as the change that makes it."""

from conftest import system

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.event import Sort
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.model.system import System
from plumbnet.report.studies.change_phrases import change_in_words
from plumbnet.rules.rule_profile import profile
from plumbnet.study.contingency.contingencies import choices, happenings


def told(of: System, rules: str = "general") -> dict[str, str]:
    """The change of each event, in words, by its title."""
    return {one.title: change_in_words(one.change) for one in happenings(of, profile(rules))}


def test_events_stand_in_the_order_of_the_file_with_quantities_in_its_units() -> None:
    house = system(
        """street -> meter -> valve -> tee -> heater -> tap.hot
           tee -> tank""",
        heater="relief: {pressure: 150 psi, temperature: 210 degF}",
    )
    assert told(house) == {
        "street: pressure up to the limit": "set street: pressure 80 psi",
        "meter: exchanged for one with a check": "set meter: check yes",
        "valve: shut": "close valve",
        "heater: as hot as its relief valve lets it": "set heater: setpoint 210 degF",
        "heater: exchanged for a tankless one": "set heater: kind tankless_heater and volume as usual",
        "heater/relief: plugged": "let heater/relief fail (plugged)",
        "tap: crossover": "let tap fail (crossover)",
        "tank: waterlogged": "let tank fail (waterlogged)",
        "tank: charge lost": "set tank: precharge 0 psi",
    }


def test_limit_is_that_of_the_rules() -> None:
    assert told(system("street -> tap.cold"), "uk-2010")["street: pressure up to the limit"] != (
        "set street: pressure 80 psi"
    )


def test_heater_whose_circulation_pipe_would_have_no_place_is_not_exchanged() -> None:
    looped = system("street -> heater -> tee -> tap.hot\n tee -> pump -> heater.return")
    assert "heater: exchanged for a tankless one" not in told(looped)


def test_tankless_heater_is_exchanged_for_one_with_a_tank() -> None:
    of = system("street -> tankless -> tap.hot")
    assert told(of)["tankless: exchanged for one with a tank"] == "set tankless: kind storage_heater and volume 50 gal"


def test_every_event_of_every_kind_can_be_made() -> None:
    of = system(
        "street -> tee -> meter -> valve -> cv -> prv -> booster -> pump -> tee2 -> tank\n tee2 -> relief", cv=""
    )
    found = happenings(of, profile("general"))
    assert {one.part for one in found} == set(of.parts) - {"tee", "tee2"}
    for one in found:
        after = with_changes(of, [one.change])
        assert after.parts[one.part] != of.parts[one.part]


def test_event_that_its_kind_allows_and_the_layout_does_not_is_left_out() -> None:
    assert KINDS["storage_heater"].kind == "storage_heater"
    hot = system("street -> heater -> tap.hot", heater="rating: 60 psi")
    assert Change(close="valve") not in [one.change for one in happenings(hot, profile("general"))]


def test_heater_gets_as_hot_as_the_rules_of_its_circuit_let_its_relief_valve() -> None:
    runs = "street -> tee1 -> heater -> tap.hot\ntee1 -> cv -> tee2 -> boiler -> pump -> emitter -> tee2"
    report = plumbnet.check(system(runs), rules={"water": "general", "heating": "us-boiler"})
    found = happenings(report.system, report.rules, report.facts.circuit_of)
    hottest = {one.part: change_in_words(one.change) for one in found if one.words.startswith("as hot as")}
    assert hottest == {"heater": "set heater: setpoint 210 degF", "boiler": "set boiler: setpoint 250 degF"}


def test_choices_are_the_changes_that_can_be_made_here_with_numbers_as_they_are_now() -> None:
    house = system("street -> valve -> prv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
    found = choices(house, profile("general"))
    assert [(one.part, one.words, one.sort, change_in_words(one.change)) for one in found if one.part != "heater"] == [
        ("street", "pressure", Sort.NUMBER, "set street: pressure 60 psi"),
        ("valve", "shut", Sort.TURNED, "close valve"),
        ("valve", "locked", Sort.OTHER_DEVICE, "set valve: locked yes"),
        ("prv", "creeping", Sort.FAULT, "let prv fail (creeping)"),
        ("prv", "exchanged for one with a bypass", Sort.OTHER_DEVICE, "set prv: bypass yes"),
        ("prv", "set", Sort.NUMBER, "set prv: set 50 psi"),
        ("heater/relief", "plugged", Sort.FAULT, "let heater/relief fail (plugged)"),
        ("tap", "crossover", Sort.FAULT, "let tap fail (crossover)"),
        ("tap", "running", Sort.TURNED, "draw tap"),
    ]
    assert [one.field for one in found if one.sort is Sort.NUMBER] == ["pressure", "set", "setpoint", "volume"]
    assert all(not one.field for one in found if one.sort is not Sort.NUMBER)


def test_choice_that_the_layout_does_not_allow_is_left_out() -> None:
    looped = system("street -> heater -> tee -> tap.hot\n tee -> pump -> heater.return")
    words = [one.words for one in choices(looped, profile("general")) if one.part == "heater"]
    assert "exchanged for a tankless one" not in words
    assert "put out of service" in words
