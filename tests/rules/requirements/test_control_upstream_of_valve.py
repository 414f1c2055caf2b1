"""A tank that the valve at its heater would part from it: its words and its bounds."""

from dataclasses import replace

from conftest import system

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.rules.finding import Severity
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile

NAME = "control-upstream-of-valve"
FACTS = plumbnet.check(system("street -> cv -> tee -> heater -> tap.hot\ntee -> tank")).facts


def test_valve_is_left_in_place_and_the_tank_brought_behind_it() -> None:
    (one,) = (
        found
        for found in plumbnet.check(read_system(REQUIREMENTS[NAME].bad.encode(), file="bad.yaml")).findings
        if found.name == NAME
    )
    assert (one.severity, one.parts) == (Severity.WARNING, ("stop", "heater"))
    assert one.text == "stop, if it is shut, parts heater from tank."
    assert one.advice == (
        "Leave a valve at the heater where it is, and connect tank between the two; or tag stop: not to be shut while "
        "there is heat."
    )


def test_two_heaters_behind_one_valve_are_told_together() -> None:
    (first,) = FACTS.heaters
    pair = tuple(replace(first, name=name, valves_to_tank=("stop",)) for name in ("left", "right"))
    (one,) = REQUIREMENTS[NAME].breaches(replace(FACTS, heaters=pair), profile("ontario-2024"))
    assert one.parts == ("stop", "left", "right")
    assert one.text.startswith("stop, if it is shut, parts left and right from ")


def test_valve_between_heater_and_tank_is_told_as_the_code_has_it() -> None:
    facts = replace(FACTS, heaters=(replace(FACTS.heaters[0], valves_to_tank=("stop",)),))
    told = {
        rules: [bool(list(REQUIREMENTS[name].breaches(facts, profile(rules)))) for name in (NAME, "valve-before-tank")]
        for rules in ("upc-2024", "ontario-2024", "en-806", "general")
    }
    assert told == {
        "upc-2024": [True, False],
        "ontario-2024": [True, False],
        "en-806": [False, True],
        "general": [False, False],
    }
