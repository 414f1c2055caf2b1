"""What is told of a heater."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts import HeaterFacts

# Two heaters apart: what the first grows by pushes through cv2 into the second's water and cannot come back.
#
#     street >| tee1 with tank1 > heater1 > cv2 >| tee2 with tank2 > heater2 > tap

APART = """
    street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot
    tee1 -> tank1
    tee2 -> tank2
    heater1.relief -> relief1
    heater2.relief -> relief2
"""
TANKS = {"tank1": "volume: 10 gal", "tank2": "volume: 5.2 gal"}
"""Heater 2 alone comes to 74.4 psi, both at once to that; heater 1 first, then heater 2, brings it to 80.6."""


def heater(runs: str, name: str = "heater", **parts: str) -> HeaterFacts:
    return next(one for one in plumbnet.check(system(runs, **parts)).heaters if one.name == name)


def test_worst_order_is_told_with_the_place_that_it_breaks() -> None:
    one = heater(APART, "heater1", **TANKS)
    (place,) = one.broken
    assert (place.part, place.way, place.history) == ("tap", ("cv2",), (("heater1",), ("heater2",)))
    assert place.limit_pa == pytest.approx(80 * PSI)
    assert place.highest_pa == place.reached_pa > 80 * PSI
    assert not one.is_past_limit


def test_place_is_told_at_its_own_height() -> None:
    level, low = (heater(APART, "heater1", **TANKS, tap=f"elevation: {height} ft").broken for height in (0, -2))
    assert low[0].limit_pa == level[0].limit_pa
    assert low[0].highest_pa == pytest.approx(level[0].highest_pa + 2 * 0.3048 * 9806.65, rel=1e-6)


def test_nothing_is_broken_where_the_second_tank_is_large_enough() -> None:
    one = heater(APART, "heater1", tank1="volume: 10 gal", tank2="volume: 12 gal")
    assert (one.verdict.value, one.broken) == ("controlled", ())


def test_limit_names_the_way_to_where_it_is_set() -> None:
    one = heater(APART, "heater1", **TANKS)
    assert (one.limit_at, one.limit_way, one.limit_by) == ("tap", ("cv2",), "fixture tap")


def test_what_is_settled_for_sure_is_told_as_one_pressure() -> None:
    one = heater(APART, "heater2", **TANKS)
    assert one.settled_pa == one.settled_least_pa
    assert one.history == (("heater1",), ("heater2",))
