"""Eleven hundred random layouts, a hundred times that in the long run, by the public door against the definitions."""

from collections import Counter

import pytest
from conftest import system, times
from hypothesis import given, note

import plumbnet
from oracles.comparing import Tally, compare
from oracles.held_water import HeldWater
from oracles.random_buildings import FAMILIES
from oracles.random_layouts import Layout
from plumbnet.layout.yaml.fault import LayoutError

LEAST = {
    "anything": {"open": 90, "rung main": 90, "rung open air": 12},
    "anything closed": {"controlled": 11, "trapped": 38, "sealed": 24, "on-demand": 3, "stop check_valve": 75},
    "districts": {"trapped": 40, "sealed": 30, "closes 1": 15, "stop pressure_reducer": 25, "stop shut_valve": 6},
    "houses": {"open": 30, "on-demand": 10, "stop checked_meter": 5, "rung expansion tank": 40},
    "closed houses": {"controlled": 12, "on-demand": 22, "trapped": 15, "stop double_check": 11, "stop dual_check": 11},
    "cascades": {"controlled": 15, "trapped": 60, "in an order": 20},
    "circulation": {"loop": 60, "trapped": 20, "controlled": 3},
    "heating": {"loop": 60, "trapped": 25, "controlled": 5, "stop pressure_reducer_with_bypass": 1},
    "changed": {"open": 15, "trapped": 15, "loop": 20},
}
"""How often each thing comes up, at the least, in the layouts of a family: no comparison can fall silent."""
SUBJECTS = {
    "verdict": 150,
    "ladder": 150,
    "stops": 150,
    "closings": 150,
    "loops": 150,
    "settled": 150,
    "broken": 5,
    "need": 5,
}
"""Comparisons of each subject that two hundred layouts of any family come to, at the least."""


@pytest.mark.parametrize("family", FAMILIES)
def test_whole_layouts_are_answered_as_the_definitions_say(family: str) -> None:
    tally, drawn = Tally(), Counter[str]()

    @times(FAMILIES[family].of_thousand / 100)
    @given(FAMILIES[family].layouts)
    def holds(layout: Layout) -> None:
        note(layout.text)
        drawn["layouts"] += 1
        system = layout.system
        try:
            report = plumbnet.check(system)
        except LayoutError:
            drawn["unanswered"] += 1
            assert HeldWater(system).stands_too_high()
            return
        compare(report, tally)

    holds()
    print(family, dict(drawn), dict(tally.compared), dict(tally.seen))  # noqa: T201  shown by pytest -rP in the long run
    share = drawn["layouts"] / FAMILIES[family].of_thousand
    missing = {word: tally.seen[word] for word, least in LEAST[family].items() if tally.seen[word] < least * share}
    assert not missing
    short = {each: tally.compared[each] for each, least in SUBJECTS.items()}
    assert all(count * 200 >= SUBJECTS[each] * drawn["layouts"] for each, count in short.items()), short


BEHIND_TWO_METERS = """
street -> meter1 -> tee1 -> meter2 -> tee2 -> heater1 -> tee3 -> relief
tee1 -> tank1
tee2 -> tank2
tee3 -> tank3
tee1 -> tee4 -> heater2 -> tee5
tee4 -> tank4
tee5 -> tank5
"""


def test_what_the_worst_order_leaves_is_told_where_it_is_hardly_more_than_what_all_at_once_leaves() -> None:
    small = {f"tank{number}": "volume: 2 L, precharge: 150 kPa" for number in range(1, 6)}
    layout = system(
        BEHIND_TWO_METERS,
        street="elevation: -4 m, pressure: 600 kPa, temperature: 5 degC",
        meter1="check: true",
        meter2="check: true",
        heater1="volume: 40 L, setpoint: 50 degC",
        heater2="volume: 300 L, setpoint: 50 degC",
        relief="elevation: 3 m, pressure: 600 kPa",
        **small,
    )
    tally = Tally()
    compare(plumbnet.check(layout), tally)
    assert tally.compared["need"]
