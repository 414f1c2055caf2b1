"""What of a layout may be touched."""

import pytest
from conftest import system
from hotel import hotel
from touched import EVERY_KIND, HOUSE, states_of

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.event import Sort
from plumbnet.layout.model.part import KINDS

FIXED_ELSEWHERE = {"heat_exchanger", "indirect_heater", "solar_collector"}
"""Kinds whose alternatives are those of other heaters."""
NEVER_TOUCHED = {
    "air_gap",
    "air_separator",
    "closely_spaced_tees",
    "device",
    "heat_trap",
    "inlet_group",
    "safety_group",
    "tee",
    "vacuum_relief_valve",
}


def test_layout_of_the_tests_has_every_kind_that_can_be_touched() -> None:
    kinds = {one.kind for one in states_of(EVERY_KIND).touchables} - {"pipe"}
    assert kinds == KINDS.keys() - FIXED_ELSEWHERE - NEVER_TOUCHED


def test_house_offers_what_its_kinds_offer_and_what_its_pipes_can_take() -> None:
    house = states_of(HOUSE)
    offered = {one.name: [option.words for option in one.options] for one in house.touchables}
    assert offered["stop"] == ["shut", "locked"]
    assert offered["meter"] == ["check stuck open", "exchanged for one without a check"]
    assert offered["pipe from split to heater"] == [
        "a check valve",
        "a shut valve",
        "a reducer, set to 50 psi",
        "a reducer with a bypass, set to 50 psi",
        "a tank of 8 L, charged to 62 psi".replace("8 L", "2 gal"),
    ]
    assert {one.name: one.now for one in house.touchables if one.pipe is None} == {
        "street": "as drawn",
        "stop": "open",
        "meter": "with a check",
        "tank-stop": "open",
        "tank": "sound",
        "heater": "in service",
        "heater/relief": "sound",
        "sink": "shut",
    }
    numbers = {one.name: [(each.words, each.value, each.unit) for each in one.numbers] for one in house.touchables}
    assert numbers["street"] == [("pressure", 62.0, "psi")]
    assert numbers["tank"] == [("precharge", 62.0, "psi"), ("volume", 5.0, "gal")]


def test_nothing_may_be_put_before_a_safety_relief_valve() -> None:
    names = [one.name for one in states_of(HOUSE).touchables]
    assert [name for name in names if "relief" in name] == ["heater/relief"]


def test_tank_that_is_put_in_is_of_the_size_that_is_needed_and_charged_to_what_stands_there() -> None:
    trapped = states_of(HOUSE.replace("tank: {kind", "tank: {state: waterlogged, kind"))
    words = next(one.options[-1].words for one in trapped.touchables if one.name == "pipe from split to heater")
    assert words == "a tank of 5 gal, charged to 62 psi"


@pytest.mark.parametrize("layout", [HOUSE, EVERY_KIND])
def test_everything_put_in_has_a_name_of_its_own(layout: str) -> None:
    states = states_of(layout)
    system = states.drawn.system
    for option in range(5):
        changes = [each for one in states.touchables if one.pipe is not None for each in one.options[option].changes]
        placed = [one.insert or one.add for one in changes]
        names = [one.part for one in placed if one is not None]
        assert len(set(names)) == len(names)
        assert not set(names) & system.parts.keys()
        assert len(with_changes(system, changes).parts) == len(system.parts) + len(names)


def test_order_is_the_same_each_time() -> None:
    assert states_of(EVERY_KIND).touchables == states_of(EVERY_KIND).touchables


def test_only_what_a_kind_calls_a_failure_or_a_mishap_is_a_fault() -> None:
    faults = {
        option.words for one in states_of(EVERY_KIND).touchables for option in one.options if option.sort is Sort.FAULT
    }
    assert faults == {
        "as hot as a relief valve may let it", "as hot as its relief valve lets it", "charge lost", "check stuck open",
        "checks stuck open", "creeping", "crossover", "passing hot", "plugged", "stuck open", "waterlogged",
    }  # fmt: skip


def test_pipe_that_cannot_be_named_among_several_is_not_offered() -> None:
    twice = states_of(system("street -> tee1 -> tee2 -> heater -> tap.hot\ntee1 -> tee2"))
    names = [one.name for one in twice.touchables if one.pipe is not None]
    assert names == ["pipe from street to tee1", "pipe from tee2 to heater", "pipe from heater to tap"]


def test_pipes_of_a_very_large_layout_are_not_offered() -> None:
    assert any(one.pipe is not None for one in states_of(hotel(40)).touchables)
    assert all(one.pipe is None for one in states_of(hotel(60)).touchables)
