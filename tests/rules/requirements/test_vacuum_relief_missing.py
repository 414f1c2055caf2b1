"""Stores of hot water that can be siphoned empty, as the codes see them."""

import pytest
from conftest import system

import plumbnet
from plumbnet.rules.answering import Answered, answers_of
from plumbnet.rules.four_answers import AnswerWord
from plumbnet.rules.rule_profile import profile, profile_names

NAME = "vacuum-relief-missing"
HOUSE = "street -> tee -> heater -> tap.hot"
HIGH = {"heater": "elevation: 10 ft", "tap": "elevation: 3 ft"}
FITTED = (
    "Have one fitted on the cold pipe above the top of heater, or on a tapping of its own, with no valve and no check "
    "between; it replaces no relief valve."
)
VALVE = "kind: vacuum_relief_valve, elevation: 15 ft"


def answer(runs: str, rules: str, **parts: str) -> Answered:
    report = plumbnet.check(system(runs, **parts), rules=rules)
    (one,) = (one for one in answers_of(report.facts, report.rules) if one.rule.name == NAME)
    return one


def test_heater_above_a_tap_is_told_with_both_heights() -> None:
    found = answer(HOUSE, "upc-2018", **HIGH).finding
    assert found is not None
    assert (found.severity, found.parts, found.verified) == ("warning", ("heater", "tap"), True)
    assert found.text == "heater stands at 10 ft, above tap at 3 ft, and no vacuum relief valve lets air in."
    assert found.advice == FITTED
    assert "608.7" in found.clause


def test_plumbing_code_takes_a_hole_in_the_dip_tube_as_well() -> None:
    found = answer(HOUSE, "ipc-2021", **HIGH).finding
    assert found is not None
    assert found.advice == f"{FITTED} A hole near the top of its dip tube does as well: where it has one, accept this."
    assert not found.verified


def test_heater_fed_from_below_is_told_whatever_its_height() -> None:
    found = answer(HOUSE, "irc-2021", heater="fed_from_below: true").finding
    assert found is not None
    assert (found.parts, found.advice) == (("heater",), FITTED)
    assert found.text == "heater is fed from below, and no vacuum relief valve lets air in."


@pytest.mark.parametrize(("tap", "word"), [("2.99 m", "broken"), ("3 m", "met"), ("4 m", "met")])
def test_tap_at_the_same_height_is_not_below(tap: str, word: str) -> None:
    assert answer(HOUSE, "upc-2024", heater="elevation: 3 m", tap=f"elevation: {tap}").word == word


def test_of_several_taps_the_lowest_decides_and_cold_ones_do_not() -> None:
    runs = f"{HOUSE}\nheater.hot -> tee2 -> tap2.hot\ntee -> tap3.cold".replace("heater -> tap.hot", "heater.cold", 1)
    runs = f"{runs}\ntee2 -> tap.hot"
    parts = {"heater": "elevation: 10 ft", "tap": "elevation: 20 ft", "tap2": "elevation: 12 ft"}
    assert answer(runs, "upc-2018", **parts, tap3="elevation: -3 ft").word is AnswerWord.MET
    found = answer(runs, "upc-2018", **(parts | {"tap2": "elevation: 9 ft"})).finding
    assert found is not None
    assert found.parts == ("heater", "tap2")


def test_file_that_writes_no_height_does_not_say() -> None:
    one = answer(HOUSE, "upc-2018")
    assert (one.word, one.text) == (AnswerWord.UNTOLD, "its height or that of a tap (elevation)")
    one = answer(HOUSE, "ipc-2021")
    assert one.text == ("its height or that of a tap (elevation) and whether it is fed from below (fed_from_below)")
    one = answer(HOUSE, "npc-2020")
    assert (one.word, one.text) == (AnswerWord.UNTOLD, "whether it is fed from below (fed_from_below)")
    assert answer(HOUSE, "npc-2020", heater="fed_from_below: false").text == "it is fed from above"


@pytest.mark.parametrize(
    ("more", "parts", "word"),
    [
        ("tee -> breaker", {}, "met"),
        ("heater.return -> breaker", {}, "met"),
        ("tee -> valve -> breaker", {}, "broken"),
        ("tee -> cv -> breaker", {}, "broken"),
        ("heater.return -> vent", {}, "met"),
    ],
)
def test_air_comes_by_pipes_and_fittings_alone(more: str, parts: dict[str, str], word: str) -> None:
    one = answer(f"{HOUSE}\n{more}", "upc-2018", **HIGH, **parts, breaker=VALVE)
    assert one.word == word
    if word == "met":
        assert one.text == f"{more.rpartition(' ')[2]} lets air in"


def test_tap_that_runs_is_no_vent() -> None:
    parts = HIGH | {"tap": "elevation: 3 ft, drawing: true"}
    assert answer(HOUSE, "upc-2018", **parts).word is AnswerWord.BROKEN


def test_store_that_serves_no_tap_is_above_none() -> None:
    one = answer("street -> heater", "upc-2018", heater="elevation: 10 ft")
    assert (one.word, one.text) == (AnswerWord.NOT_APPLICABLE, "no tap draws from it")


ABOVE, BELOW, BOTH = (
    {"upc-2018", "upc-2021", "upc-2024"},
    {"irc-2021", "irc-2024", "npc-2020", "npc-2025"},
    {"ipc-2021", "ipc-2024"},
)


@pytest.mark.parametrize("rules", profile_names())
def test_codes_differ_on_which_stores_they_mean(rules: str) -> None:
    assert (answer(HOUSE, rules, **HIGH).word is AnswerWord.BROKEN) is (rules in ABOVE | BOTH)
    assert (answer(HOUSE, rules, heater="fed_from_below: true").word is AnswerWord.BROKEN) is (rules in BELOW | BOTH)
    assert profile(rules).vacuum_relief.is_asked is (rules in ABOVE | BELOW | BOTH)


def test_store_in_a_heating_circuit_is_not_meant() -> None:
    one = answer("loop -> tee -> heater -> pump -> emitter -> tee", "ipc-2021", heater="fed_from_below: true")
    assert one.word is AnswerWord.NOT_APPLICABLE
    assert one.text == "nobody drinks its water: it stands in a heating circuit"
