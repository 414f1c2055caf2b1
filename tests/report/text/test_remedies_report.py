"""Remedies as text: in short under a report, in full with their scenarios."""

import json
import re

from curing import HOUSE, RELIEVED, TANKED, house
from forms import as_json, written

import plumbnet
from plumbnet.layout.model.system import System
from plumbnet.report.formats.json1 import JsonWriter
from plumbnet.report.text.remedies_report import (
    MOST_REMEDIES,
    NONE_FOUND,
    RELIEF_FIRST,
    remedies_section,
    remedies_text,
)
from plumbnet.study.remedies.fewest_tanks.tank_placement import plans
from plumbnet.study.remedies.remedy_search import remedies

WORN = {"tank": "precharge: 20 psi, volume: 5 gal", "tank2": "state: waterlogged"}
WORN_RUNS = f"{TANKED}\n tee -> tank2"


def short(layout: System) -> str:
    report = plumbnet.check(layout)
    return "\n".join(remedies_section(report.facts, remedies(report)))


def full(layout: System) -> str:
    report = plumbnet.check(layout)
    return remedies_text(report, remedies(report), plans(report))


def test_best_remedy_stands_first_with_what_becomes_of_the_heater() -> None:
    _, whose, remedy, where, outcome = short(house()).splitlines()
    assert whose == "  heater"
    assert remedy.startswith("    1. Fit an expansion tank of 5 gal, ")
    assert where == "       Why there: it is the cold pipe of heater."
    assert "heater is controlled at 75.1 psi" in outcome


def test_three_are_shown_and_the_rest_counted() -> None:
    runs = "street -> tee9 -> cv -> tee -> heater -> tap.hot\n tee -> tank\n tee -> tank2\n tee9 -> tank3"
    text = short(house(runs, **WORN, tank3="volume: 15 gal"))
    assert text.count("Then heater is") == MOST_REMEDIES
    assert "and 1 more: " in text


def test_nothing_is_said_where_nothing_is_wrong() -> None:
    assert short(house(TANKED)) == ""
    assert "No heater here needs a remedy." in full(house(TANKED))


def test_layout_that_was_not_searched_says_so() -> None:
    assert " ".join(remedies_section(plumbnet.check(house()).facts, None)) == (
        "Remedies are looked for in layouts of up to 300 parts, and in larger ones where few heaters are in trouble; "
        "the command plumbnet remedies looks in any."
    )


def test_sealed_heater_is_told_that_a_relief_valve_is_no_remedy() -> None:
    layout = house(HOUSE, heater="input: 40000 Btu/h")
    for text in (short(layout), full(layout)):
        assert RELIEF_FIRST in re.sub(r"\s+", " ", text)


def test_heater_without_a_remedy_says_what_that_means() -> None:
    layout = house(HOUSE, heater="rating: 90 psi")
    for text in (short(layout), full(layout)):
        assert NONE_FOUND in re.sub(r"\s+", " ", text)


def test_full_text_holds_each_scenario_and_the_caution() -> None:
    text = full(house())
    assert "\n  heater cured 1:\n    note: " in text
    assert "      - add: {part: heater-tank, kind: " in text
    assert "A relief valve is a safety device" in text


def test_plan_for_several_heaters_says_where_and_for_whom() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\n street -> cv2 -> tee2 -> heater2 -> tap2.hot"
    text = full(house(runs, heater2=RELIEVED))
    assert "One tank for heater, " in text
    assert "It leaves heater2 as before." in text
    assert "2 tanks for heater and heater2, " in text
    assert "at tee2: 5 gal (at least 3.97 gal)" in text


def test_json_carries_each_remedy_with_its_change_and_verdict() -> None:
    report = plumbnet.check(house())
    document = json.loads(written(JsonWriter(), report))
    (found,) = document["reports"][0]["heaters"][0]["remedies"]
    assert found["verdict"] == "controlled"
    assert found["cures"] == ["heater"]
    assert found["change"][0]["add"]["volume"] == "5 gal"
    assert document["reports"][0]["remedies_searched"] is True
    unsearched = json.loads(as_json(report))["reports"][0]
    assert unsearched["remedies_searched"] is False
    assert unsearched["heaters"][0]["remedies"] == []
