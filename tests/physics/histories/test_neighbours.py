"""One zone grows and pushes into its neighbours: where all come to, by Boyle's law on paper.

A tank of V litres that stands at its charge, 200 kPa, has taken half of V at 400 kPa: V (1 - 200 / p).
"""

import math
from itertools import pairwise

import pytest
from on_paper import gate, kpa, load, pressed, tank, zones

from plumbnet.budgets import MOST_NARROWED
from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad
from plumbnet.physics.histories.neighbours import Neighbours


def grown(all_zones: Neighbours[str], zone: str, litres: float, **state: float) -> dict[str, float]:
    """The state in kPa once a zone has grown, from cold but for the pressures in kPa named."""
    begun = all_zones.cold | {name: level * 1e3 for name, level in state.items()}
    return kpa(all_zones.after(begun, zone, litres / 1e3))


# What one zone comes to


def test_growth_fills_the_zones_own_tank() -> None:
    # 5 of 10 L
    assert grown(zones({"a": load(5, 10.0)}), "a", 5) == {"a": 400.0}


def test_growth_fills_all_tanks_in_reach_to_one_level_and_none_before_it() -> None:
    # 10 L and 10 L, half of 20; what stands before a feels nothing
    loads = {"before": load(0, 10.0), "a": load(10, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, "before>a", "a>b"), "a", 10) == {"before": 200.0, "a": 400.0, "b": 400.0}


def test_zone_without_a_tank_comes_to_where_those_beyond_take_it() -> None:
    assert grown(zones({"a": load(5), "b": load(0, 10.0)}, "a>b"), "a", 5) == {"a": 400.0, "b": 400.0}


def test_zone_beyond_that_stands_higher_is_not_reached() -> None:
    # a: 2 of 10 L leave it at 250, below the 300 of b
    loads = {"a": load(2, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, "a>b"), "a", 2, b=300) == {"a": 250.0, "b": 300.0}


def test_zone_beyond_that_stands_higher_takes_what_is_left() -> None:
    # a alone to 250: 2 L; then both tanks, from 2 L each to 5 L each: 6 L
    loads = {"a": load(8, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, "a>b"), "a", 8, b=250) == {"a": 400.0, "b": 400.0}


def test_check_leaves_the_zone_beyond_lower_by_what_opens_it() -> None:
    # a at 450 opens 50 kPa: b at 400 has taken 5 L; a has no tank
    assert grown(zones({"a": load(5), "b": load(0, 10.0)}, gate("a>b", 50)), "a", 5) == {"a": 450.0, "b": 400.0}


def test_growth_too_small_to_open_the_check_stays_where_it_is() -> None:
    # 2 of 10 L: 250, and the check needs 260
    loads = {"a": load(2, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, gate("a>b", 60)), "a", 2) == {"a": 250.0, "b": 200.0}


def test_reducer_that_shuts_leaves_the_rest_to_the_zones_own_tank() -> None:
    # b takes 2 of 10 L up to 250 and the reducer shuts; a is left with 5 of 10 L
    loads = {"a": load(7, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, gate("a>b", shuts=250)), "a", 7) == {"a": 400.0, "b": 250.0}


def test_reducer_that_shuts_before_a_zone_without_a_tank_leaves_nothing() -> None:
    loads = {"a": load(7), "b": load(0, 10.0)}
    assert grown(zones(loads, gate("a>b", shuts=250)), "a", 7) == {"a": math.inf, "b": 250.0}


def test_reducer_lets_through_what_stays_below_its_set() -> None:
    loads = {"a": load(1.9), "b": load(0, 10.0)}
    level = round(pressed(0.19), 4)
    assert grown(zones(loads, gate("a>b", shuts=250)), "a", 1.9) == {"a": level, "b": level}


def test_no_tank_at_all_ends_nowhere() -> None:
    assert grown(zones({"a": load(1), "b": load()}, "a>b"), "a", 1) == {"a": math.inf, "b": math.inf}


def test_tanks_too_small_for_the_growth_end_nowhere() -> None:
    assert grown(zones({"a": load(11, 10.0)}), "a", 11) == {"a": math.inf}
    assert grown(zones({"a": load(3, tank(10, most=2))}), "a", 3) == {"a": math.inf}


def test_full_membrane_leaves_the_rest_to_the_next() -> None:
    # 1 L into a, which is full; 5 L into b
    loads = {"a": load(6, tank(10, most=1)), "b": load(0, 10.0)}
    assert grown(zones(loads, "a>b"), "a", 6) == {"a": 400.0, "b": 400.0}


def test_tank_charged_above_the_start_takes_nothing_until_then() -> None:
    # charge 400 over 200: half of 10 L at 800
    assert grown(zones({"a": load(5, tank(10, charge=400))}), "a", 5) == {"a": 800.0}


def test_outlet_ends_the_climb() -> None:
    loads = {"a": load(5, 10.0, lets_go=300), "b": load(0, 10.0, lets_go=280)}
    assert grown(zones(loads), "a", 5) == {"a": 300.0, "b": 200.0}
    # through the check it is that of b: no more than 280 there
    assert grown(zones(loads, "a>b"), "a", 9) == {"a": 280.0, "b": 280.0}
    assert grown(zones(loads, gate("a>b", 10)), "a", 9) == {"a": 290.0, "b": 280.0}


def test_zone_never_falls_though_its_outlet_would_open_lower() -> None:
    assert grown(zones({"a": load(5, 10.0, lets_go=300)}), "a", 5, a=320) == {"a": 320.0}


def test_neighbour_that_nothing_holds_takes_nothing_more() -> None:
    loads = {"a": load(5, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, "a>b"), "a", 5, b=math.inf) == {"a": 400.0, "b": math.inf}


def test_gates_in_a_circle_make_one_pool() -> None:
    loads = {"a": load(10, 10.0), "b": load(0, 10.0)}
    assert grown(zones(loads, "a>b", "b>a"), "a", 10) == grown(zones(loads, "a>b", "b>a"), "b", 10)
    assert grown(zones(loads, "a>b", "b>a"), "a", 10) == {"a": 400.0, "b": 400.0}


def test_two_rows_to_one_zone_are_used_one_after_the_other() -> None:
    # by the reducer up to 250: 2 L; then by the check of 50 kPa, b at 400 and a, without a tank, at 450: 5 L
    loads = {"a": load(5), "b": load(0, 10.0)}
    gates = gate("a>b", shuts=250), gate("a>b", 50)
    assert grown(zones(loads, *gates), "a", 5) == {"a": 450.0, "b": 400.0}
    assert grown(zones(loads, *gates), "a", 1) == {"a": round(pressed(0.1), 4), "b": round(pressed(0.1), 4)}


def test_order_of_two_above_one_is_not_all_the_same() -> None:
    # top without a tank grows by 2, side with 18 L by 3, both into 8 L below.  Source: own study, two above one.
    # top first: 2/8 in the lower, the side then alone in its 18 L: 3/18.  Side first: 3/26, and 2/8 on top of that.
    loads = {"top": load(2), "side": load(3, 18.0), "low": load(0, 8.0)}
    both = zones(loads, "top>low", "side>low")
    first = both.after(both.after(both.cold, "top", 2e-3), "side", 3e-3)
    assert kpa(first) == {name: round(pressed(s), 4) for name, s in (("top", 1 / 4), ("side", 1 / 6), ("low", 1 / 4))}
    last = both.after(both.after(both.cold, "side", 3e-3), "top", 2e-3)
    share = 3 / 26 + 2 / 8
    assert kpa(last) == {name: round(pressed(s), 4) for name, s in (("top", share), ("side", 3 / 26), ("low", share))}


# What grows, and what lets it out


def test_only_what_grows_and_can_rise_is_heated() -> None:
    loads = {"warm": load(5, 10.0), "cold": load(0, 10.0), "held": load(5, lets_go=200), "low": load(5, lets_go=150)}
    assert zones(loads).growth_m3 == {"warm": 5e-3}


@pytest.mark.parametrize(("over_pa", "rises"), [(0.0, False), (0.5e-3, False), (2e-3, True)])
def test_outlet_a_hair_above_the_static_pressure_is_at_it(over_pa: float, rises: bool) -> None:  # noqa: FBT001 - a table's column
    held = zones({"a": ZoneLoad({"h": 5e-3}, 200e3, (), 200e3 + over_pa)})
    assert ("a" in held.growth_m3) is rises


def test_zone_that_pushes_into_one_that_is_held_cannot_rise_either() -> None:
    loads = {"a": load(5, 10.0), "street": load(0, lets_go=200)}
    assert zones(loads, "a>street").growth_m3 == {}
    assert zones(loads, "street>a").growth_m3 == {"a": 5e-3}
    assert zones(loads, gate("a>street", 10)).growth_m3 == {"a": 5e-3}


def test_first_outlet_in_reach_lets_go() -> None:
    loads = {"a": load(1, lets_go=600), "b": load(0, lets_go=400), "c": load(0, lets_go=300)}
    row = zones(loads, gate("a>b", 10), gate("b>c", 120))
    assert [row.lets_go_abs_pa(zone) for zone in "abc"] == [410e3, 400e3, 300e3]


def test_outlet_counts_from_the_static_pressure_where_it_is_set_below_it() -> None:
    assert zones({"a": load(1, lets_go=150)}).lets_go_abs_pa("a") == 200e3
    assert zones({"a": load(1)}).lets_go_abs_pa("a") == math.inf


def test_outlet_at_the_set_of_a_reducer_or_above_lets_nothing_out_from_before_it() -> None:
    for lets_go, answer in ((299.0, 299e3), (300.0, math.inf), (301.0, math.inf)):
        loads = {"a": load(1), "b": load(0, lets_go=lets_go)}
        assert zones(loads, gate("a>b", shuts=300)).lets_go_abs_pa("a") == answer


# Room


def test_room_lies_between_two_pressures() -> None:
    # 10 L have taken 2 L at 250 and 5 L at 400; the second opens at 300, at 400 a quarter of it
    two = zones({"a": load(0, 10.0, tank(10, charge=300))})
    assert two.room_m3("a", 250e3, 400e3) == pytest.approx(5.5e-3)
    assert two.room_m3("a", 200e3, 250e3) == pytest.approx(2e-3)
    assert two.room_m3("a", 400e3, 250e3) == 0.0
    assert two.room_m3("a", 250e3, math.inf) == pytest.approx(18e-3)
    assert zones({"a": load()}).room_m3("a", 250e3, 400e3) == 0.0


# Who meets whom

APART = {"a": load(1, 10.0), "b": load(1, 10.0), "common": load(0, 10.0), "c": load(1, 10.0), "quiet": load()}


def test_heated_zones_that_push_into_a_zone_count_it_included() -> None:
    found = zones(APART, "a>common", "b>common", "quiet>c").pushers
    assert found == {"a": ("a",), "b": ("b",), "common": ("a", "b"), "c": ("c",)}
    assert found["quiet"] == ()


def test_company_is_all_that_push_into_the_same_zones() -> None:
    found = zones(APART, "a>common", "b>common", "quiet>c")
    assert [found.company(zone) for zone in ("a", "b", "c", "common")] == [("a", "b"), ("a", "b"), ("c",), ("a", "b")]


def test_company_is_not_made_by_zones_that_do_not_grow() -> None:
    # quiet could push into a and c, but has nothing to push
    found = zones(APART, "quiet>a", "quiet>c")
    assert [found.company(zone) for zone in ("a", "c")] == [("a",), ("c",)]


def test_reach_is_searched_once_and_kept_with_other_growth() -> None:
    found = zones({"a": load(1, 10.0), "b": load(0, 10.0)}, "a>b")
    other = found.warmed({"a": load(2, 20.0), "b": load()}, ["a"])
    assert found.reach("a") is other.reach("a")
    assert list(found.reach("a")) == ["a", "b"]
    assert other.growth_m3 == {"a": 2e-3}
    assert other.gates == [OneWayGate("a", "b")]


def test_with_other_tanks_who_pushes_where_stays_and_what_they_take_does_not() -> None:
    found = zones({"a": load(1, 10.0), "b": load(0, 10.0)}, "a>b")
    other = found.with_tanks({"a": load(1, 10.0), "b": load(0, 20.0)})
    assert other.pushers is found.pushers
    assert other.growth_m3 is found.growth_m3
    assert other.room_m3("b", *(level := (300e3, 400e3))) > found.room_m3("b", *level)


def test_zones_are_put_in_the_order_in_which_all_stand() -> None:
    found = zones({"b": load(1, 10.0), "a": load(0, 10.0), "c": load()}, "b>a")
    assert found.in_order({"c", "a", "b"}) == ["b", "a", "c"]


# Which companies are small enough to be looked into closely


def test_company_is_narrowed_where_few_of_its_zones_push_into_another() -> None:
    names = [f"z{number}" for number in range(8)]
    heated = {name: load(5, 10.0) for name in names}
    row = zones(heated, *(f"{near}>{far}" for near, far in pairwise(names)))
    into_one = zones(heated | {"pool": load(0, 10.0)}, *(f"{name}>pool" for name in names))
    assert row.company("z0") == into_one.company("z0") == tuple(names)
    assert not row.is_narrowed(names)  # 28 pairs
    assert row.is_narrowed(names[:MOST_NARROWED])
    assert into_one.is_narrowed(names)  # none
    assert not into_one.is_narrowed(names * 4)
