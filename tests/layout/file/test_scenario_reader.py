"""Scenarios: each read by itself, built on another, and told with line and caret where it cannot be."""

import pytest

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.file.scenario_reader import MOST_STEPS
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError

HOUSE = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  stop: valve
  tap: fixture
runs: [street -> stop -> tap.cold]
scenarios:
"""


def read(*scenarios: str) -> System:
    return read_system((HOUSE + "".join(f"  {one}\n" for one in scenarios)).encode(), file="house.yaml")


def told(*scenarios: str) -> str:
    found = read(*scenarios)
    return str(found.scenario_error(*found.faulty_scenarios))


def test_changes_of_the_one_that_it_builds_on_are_made_first() -> None:
    found = read(
        "third: {after: second, change: [{open: stop}]}",
        "second: {after: first, change: [{draw: tap}]}",
        "first: {change: [{close: stop}]}",
    )
    assert found.changes_of("third") == (Change(close="stop"), Change(draw="tap"), Change(open="stop"))
    assert found.changes_of("first") == (Change(close="stop"),)
    assert not found.faulty_scenarios


def test_scenario_may_change_what_the_one_below_has_brought() -> None:
    found = read(
        "check: {change: [{insert: {part: cv, kind: check_valve, between: [stop, tap]}}]}",
        "stuck: {after: check, change: [{fail: cv}]}",
    )
    assert with_changes(found, found.changes_of("stuck")).parts["cv"].model_dump()["state"] == "stuck_open"


def test_bad_scenario_is_kept_apart_and_stops_nothing() -> None:
    found = read("good: {change: [{close: stop}]}", "bad: {change: [{close: stopp}]}", "odd: {chnge: []}")
    assert list(found.scenarios) == ["good"]
    assert list(found.faulty_scenarios) == ["bad", "odd"]
    assert str(found.scenario_error("bad")) == (
        'house.yaml:9:26: no part is called "stopp": did you mean "stop"?\n'
        "  9 |   bad: {change: [{close: stopp}]}\n"
        "    |                          ^~~~~"
    )
    assert str(found.scenario_error("odd")).splitlines()[0] == (
        'house.yaml:10:9: a scenario has no field "chnge": did you mean "change"?'
    )


def test_base_that_there_is_not_is_told_with_the_nearest() -> None:
    assert told("good: {change: [{close: stop}]}", "bad: {after: god, change: [{draw: tap}]}") == (
        'house.yaml:9:16: no scenario is called "god": did you mean "good"?\n'
        "  9 |   bad: {after: god, change: [{draw: tap}]}\n"
        "    |                ^~~"
    )
    assert told("bad: {after: elsewhere, change: [{draw: tap}]}").splitlines()[0] == (
        'house.yaml:8:16: no scenario is called "elsewhere"; name one of this file, or leave it out'
    )


def test_circle_is_told_with_its_way() -> None:
    lines = told(
        "a: {after: b, change: [{draw: tap}]}",
        "b: {after: a, change: [{draw: tap}]}",
        "c: {after: a, change: [{draw: tap}]}",
        "d: {after: d, change: [{draw: tap}]}",
    ).splitlines()[::3]
    circle = "these scenarios build on each other in a circle:"
    advice = "let one of them stand by itself"
    assert lines == [
        f'house.yaml:8:14: {circle} "a" after "b" after "a"; {advice}',
        f'house.yaml:9:14: {circle} "b" after "a" after "b"; {advice}',
        'house.yaml:10:14: "a" cannot be made, and so neither can what builds on it',
        f'house.yaml:11:14: {circle} "d" after "d"; {advice}',
    ]


def test_mistake_is_told_at_the_change_that_makes_it() -> None:
    words = told(
        "base: {change: [{remove: stop}, {draw: tap}]}", "bad: {after: base, change: [{draw: tap}, {close: stop}]}"
    )
    assert words.splitlines()[0] == 'house.yaml:9:52: no part is called "stop"; name one that is there'


def test_long_chain_is_told_and_not_followed_for_ever() -> None:
    chain = [f"s{number}: {{after: s{number + 1}, change: [{{draw: tap}}]}}" for number in range(MOST_STEPS + 2)]
    found = read(*chain, f"s{MOST_STEPS + 2}: {{change: [{{draw: tap}}]}}")
    assert list(found.faulty_scenarios) == ["s0", "s1"]
    assert str(found.scenario_error("s1")).splitlines()[0] == (
        f"house.yaml:9:15: more than {MOST_STEPS} scenarios build on each other here; let one of them stand by itself"
    )


def test_file_that_is_wrong_elsewhere_tells_its_scenarios_in_one_go() -> None:
    with pytest.raises(LayoutError) as caught:
        read_system((HOUSE.replace("valve", "valv") + "  odd: {chnge: []}\n").encode(), file="house.yaml")
    assert [fault.text for fault in caught.value.faults] == ['unknown kind "valv"', 'a scenario has no field "chnge"']
