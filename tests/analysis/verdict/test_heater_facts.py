"""What is told of a heater."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.physics.fluids.water import ATMOSPHERE_PA, boiling_k
from plumbnet.rules.facts.heater_answer import HeaterFacts

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
    assert low[0].reached_pa == pytest.approx(level[0].reached_pa + 2 * 0.3048 * 9806.65, rel=1e-6)


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


CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
FOOT_PA = 0.3048 * 9806.65


def test_pressures_are_told_at_the_heater_s_own_height() -> None:
    one = heater(f"{CLOSED}\ntee -> tank", street="pressure: 50 psi, highest: 60 psi", heater="elevation: 10 ft")
    assert one.static_pa == pytest.approx(60 * PSI - 10 * FOOT_PA)
    assert one.usual_pa == pytest.approx(50 * PSI - 10 * FOOT_PA)
    assert one.limit_pa == pytest.approx(80 * PSI - 10 * FOOT_PA)
    assert one.ladder[-1].opens_pa == pytest.approx(150 * PSI - 10 * FOOT_PA)  # the valve stands at 0 ft
    assert one.settled_pa is not None
    assert one.settled_pa == one.settled_least_pa
    level = heater(f"{CLOSED}\ntee -> tank", street="pressure: 50 psi, highest: 60 psi")
    assert level.settled_pa is not None
    assert one.settled_pa == pytest.approx(level.settled_pa - 10 * FOOT_PA, abs=10.0)


def test_water_boils_by_the_pressure_at_the_heater_and_antifreeze_is_not_asked() -> None:
    one = heater(CLOSED, heater="elevation: 20 ft")
    assert one.static_pa is not None
    assert one.boils_k == pytest.approx(boiling_k(one.static_pa + ATMOSPHERE_PA), abs=1e-6)
    pytest.importorskip("CoolProp")
    assert heater(CLOSED, heater="antifreeze: {glycol: propylene, share: 30 %}").boils_k is None


def test_valves_whose_shutting_closes_it_are_told_of_open_and_of_controlled_heaters_alone() -> None:
    open_one = heater("street -> valve -> heater -> tap.hot")
    tanked = heater(f"{CLOSED}\ntee -> valve -> tank", tank="volume: 10 gal")
    trapped = heater(f"{CLOSED}\ntee -> valve -> tap2.cold")
    assert [one.verdict.value for one in (open_one, tanked, trapped)] == ["open", "controlled", "trapped"]
    assert [one.closes_if_shut.sets for one in (open_one, tanked, trapped)] == [(("valve",),), (("valve",),), ()]
    assert [one.valves_to_tank for one in (open_one, tanked, trapped)] == [(), ("valve",), ()]


def test_filter_on_the_way_to_the_tank_is_no_valve() -> None:
    parts = {"tank": "volume: 10 gal", "filter": "kind: filter"}
    one = heater(f"{CLOSED}\ntee -> filter -> valve -> tank", **parts)
    assert one.valves_to_tank == ("valve",)


def test_vent_counts_as_a_heater_s_own_only_where_nothing_stands_between() -> None:
    height = "elevation: 120 ft"
    assert heater("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> vent", vent=height).vented
    assert not heater("street -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> vent", vent=height).vented
    assert not heater("street -> cv -> tee -> heater -> tap.hot").vented


def test_growth_alone_and_shared_and_with_whom() -> None:
    runs = f"{CLOSED}\ntee -> heater2 -> tap2.hot\ntee -> tank"
    one, alone = heater(runs), heater(CLOSED)
    assert (one.shares_with, one.tanks) == (("heater2",), ("tank",))
    assert one.expansion_m3 == pytest.approx(alone.expansion_m3)
    assert one.shared_expansion_m3 == pytest.approx(2.0 * one.expansion_m3)
    open_one = heater("street -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot")
    assert (open_one.shares_with, open_one.tanks) == ((), ())
    assert open_one.shared_expansion_m3 == open_one.expansion_m3


def test_method_asked_and_what_it_asks_of_a_controlled_heater_are_told() -> None:
    asked = {"heater": "sizing: uk-4-percent", "tank": "volume: 10 gal"}
    one, plain = heater(f"{CLOSED}\ntee -> tank", **asked), heater(f"{CLOSED}\ntee -> tank", tank="volume: 10 gal")
    assert (plain.asked_method, plain.asked_tank_m3) == ("", None)
    assert one.asked_method == "uk-4-percent"
    assert one.asked_tank_m3 is not None
    trapped = heater(CLOSED, heater="sizing: uk-4-percent")
    assert trapped.asked_tank_m3 is None
    assert trapped.need is not None
    assert trapped.need.asked_m3 == pytest.approx(one.asked_tank_m3)


def test_what_stops_it_is_told_unless_it_is_open() -> None:
    assert heater(CLOSED).stopped_by.sets == (("cv",),)
    assert heater(f"{CLOSED}\ntee -> tank", tank="volume: 10 gal").stopped_by.sets == (("cv",),)
    assert heater("street -> heater -> tap.hot").stopped_by.sets == ()


def test_joint_of_hot_and_cold_or_a_bypass_that_alone_holds_it_open_is_told() -> None:
    joined = heater("street -> tee -> cv -> heater -> tap.hot\ntee -> tap.cold", tap="crossover: true")
    assert (joined.verdict.value, joined.open_by_accident, joined.open_by_bypass) == ("open", ("tap",), ())
    passed = heater("street -> prv -> heater -> tap.hot", prv="bypass: true")
    assert (passed.verdict.value, passed.open_by_accident, passed.open_by_bypass) == ("open", (), ("prv",))
    plain = heater("street -> heater -> tap.hot", tap="crossover: true")
    assert (plain.open_by_accident, plain.open_by_bypass) == ((), ())


def test_heaters_of_one_stage_are_told_by_name() -> None:
    names = [f"heater{number}" for number in (7, 2, 5, 3, 6, 1, 4)]
    more = "".join(f"\ntee -> {name} -> {name.replace('heater', 'tap')}.hot" for name in names)
    one = heater(f"street -> cv -> tee -> tank{more}", "heater5", tank="volume: 90 gal")
    assert one.verdict.value == "controlled"
    assert one.history == (tuple(sorted(names)),)


def test_water_is_told_by_its_volume_and_both_its_temperatures() -> None:
    one = heater(CLOSED, street="pressure: 60 psi, temperature: 41 degF")
    assert [one.heated_volume_m3, one.cold_k, one.hot_k] == pytest.approx([50 * 231 * 0.0254**3, 278.15, 333.15])
    assert (one.kind, one.stands_at, one.on_flow, one.is_cut_off) == ("storage_heater", "heater", False, False)
    dry = heater("heater -> tap.hot\nstreet -> tap.cold")
    assert (dry.static_pa, dry.usual_pa, dry.cold_k, dry.boils_k) == (None, None, None, None)
