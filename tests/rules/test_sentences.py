from dataclasses import replace

import pytest
from conftest import system

import plumbnet
from plumbnet.network.outlets.cut_sets import Stops
from plumbnet.rules import sentences
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.sentences import (
    MOST_LISTED,
    agreeing,
    capitalised,
    closed,
    first_stops,
    fit_a_tank,
    is_same_water,
    listed,
    needed,
    place,
    stops_in_words,
    tank_wanted,
    why_closed,
)

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
ROW = """
    street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot
    heater1.relief -> relief1
    heater2.relief -> relief2
"""


def answer(runs: str, name: str = "heater", **parts: str) -> tuple[Facts, HeaterFacts]:
    facts = plumbnet.check(system(runs, **parts)).facts
    return facts, next(one for one in facts.heaters if one.name == name)


def test_names_in_a_row() -> None:
    assert [listed(names) for names in ([], ["a"], ["a", "b"], ["a", "b", "c"])] == [
        "nothing",
        "a",
        "a and b",
        "a, b and c",
    ]
    assert listed(["a", "b"], "or") == "a or b"


def test_verb_agrees_with_one_name_and_with_several() -> None:
    assert agreeing(["tank"], "takes") == "tank takes"
    assert agreeing(["tank-1", "tank-2"], "takes") == "tank-1 and tank-2 take"


@pytest.mark.parametrize(
    ("sets", "words"),
    [
        ([["check"]], "check"),
        ([["check"], ["mixer"]], "check or mixer"),
        ([["check", "meter"]], "check and meter"),
        ([["a", "meter"], ["b", "meter"]], "either a and meter, or b and meter"),
        ([["a"], ["b", "meter"]], "either a, or b and meter"),
    ],
)
def test_sets_of_devices_in_words(sets: list[list[str]], words: str) -> None:
    assert stops_in_words(sets) == words


def test_place_is_at_a_part_or_in_a_pipe() -> None:
    assert place("tee") == "at tee"
    assert place("valve -> heater") == "in the pipe from valve to heater"


def test_tank_is_told_with_size_charge_and_place() -> None:
    assert tank_wanted(*answer(CLOSED)) == (
        "an expansion tank of 5 gal (at least 3.97 gal), charged to 60 psi, connected at tee"
    )


def test_tank_for_more_than_the_table_has_is_told_as_several() -> None:
    words = tank_wanted(*answer(CLOSED, street="pressure: 79.99 psi"))
    assert words is not None
    assert words.startswith("several expansion tanks, together at least ")
    assert words.endswith(" gal, charged to 80 psi, connected at tee")


def test_one_tank_is_told_for_the_heaters_whose_water_comes_to_it() -> None:
    # water of the first pushes into the last, and never back
    first, last = tank_wanted(*answer(ROW, "heater1")), tank_wanted(*answer(ROW, "heater2"))
    assert first is not None
    assert first == last
    assert first.endswith("connected at tee2, for heater1 and heater2 together")


def test_heater_that_needs_none_and_one_that_none_can_help() -> None:
    assert tank_wanted(*answer("street -> heater -> tap.hot")) is None
    assert tank_wanted(*answer(CLOSED, street="pressure: 80 psi")) is None
    assert needed(*answer(CLOSED, street="pressure: 80 psi")) == sentences.NO_TANK
    assert fit_a_tank(*answer(CLOSED, street="pressure: 80 psi")) == capitalised(sentences.NO_TANK)


def test_sealed_heater_needs_a_relief_valve_first() -> None:
    facts, heater = answer("street -> cv -> tee -> heater -> tap.hot")
    assert heater.verdict is Verdict.SEALED
    assert needed(facts, heater).startswith("first a relief valve ")
    assert needed(facts, heater).endswith(tank_wanted(facts, heater) or "a tank")
    assert fit_a_tank(facts, heater).startswith("Fit an expansion tank of 5 gal")


def test_closed_heater_is_told_with_what_stops_it() -> None:
    assert closed(*answer(CLOSED)).startswith("heater is closed (stopped by cv); ")


def test_closed_heater_without_any_way_is_told_so() -> None:
    facts, heater = answer(CLOSED)
    assert "(no way leads to a main or to open air)" in closed(facts, replace(heater, stopped_by=Stops(())))


def test_growth_of_several_heaters_is_told_together() -> None:
    assert "its water, with that of heater2, grows by 1.68 gal" in closed(*answer(ROW, "heater1"))


def test_same_water_is_not_told_as_more_water() -> None:
    # both heaters drive one loop; all of the water is warmed by both but for the other's own store
    runs = "street -> cv -> tee -> heater1 -> tee2 -> tap.hot\ntee -> heater2 -> tee2\ntee2 -> pump -> tee"
    facts, heater = answer(f"{runs}\nheater1.relief -> relief", "heater1")
    assert is_same_water(heater)
    assert "its water, which heater2 warms too, grows by" in closed(facts, heater)
    assert not is_same_water(answer(ROW, "heater1")[1])
    assert not is_same_water(answer(CLOSED)[1])


def test_first_of_the_smallest_sets_stops_it() -> None:
    heater = answer(CLOSED)[1]
    assert first_stops(heater) == ("cv",)
    assert first_stops(replace(heater, stopped_by=Stops(()))) == ()


def test_sentence_begins_with_a_capital_and_ends_with_a_stop() -> None:
    assert capitalised("no tank can do this") == "No tank can do this."


def test_heater_is_closed_by_what_stops_it_or_for_want_of_any_way() -> None:
    _, heater = answer(CLOSED)
    assert why_closed(heater) == "stopped by cv"
    no_way = replace(heater, stopped_by=Stops(()))
    assert why_closed(no_way) == "no way leads to a main or to open air"


def test_of_very_many_names_it_is_said_how_many_more_there_are() -> None:
    names = [f"h{number}" for number in range(MOST_LISTED + 2)]
    assert listed(names[:-2]).endswith(f"and {names[MOST_LISTED - 1]}")
    assert listed(names).endswith(f", {names[MOST_LISTED - 1]} and 2 more")
