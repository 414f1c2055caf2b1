"""How high each zone comes and by which history, worked out by Boyle's law on paper."""

import math
from itertools import pairwise

import pytest
from on_paper import Gate, gate, load, pressed, tank, zones

from plumbnet.physics.equilibrium.equilibrium import ZoneLoad
from plumbnet.physics.histories.neighbours import Neighbours, State
from plumbnet.physics.histories.peak import Peak, Peaks
from plumbnet.physics.histories.plays import History


def peaks(loads: dict[str, ZoneLoad], *gates: Gate | str) -> dict[str, Peak[str]]:
    found = Peaks(zones(loads, *gates))
    return {zone: found.of(zone) for zone in loads}


def share(peak: Peak[str], *, cold: float = 200.0) -> float:
    """What is pressed away of the gas of a tank at a peak that a history is known to bring about."""
    assert peak.reached_abs_pa == peak.highest_abs_pa
    return round(1.0 - cold * 1e3 / peak.reached_abs_pa, 9)


def order(names: str) -> History[str]:
    """Each warms after the one before."""
    return tuple((name,) for name in names.split())


# Alone, and where nobody pushes from outside


def test_nothing_warm_leaves_all_as_it_was_by_no_history() -> None:
    assert peaks({"a": load(0, 10.0), "b": load()}, "a>b") == dict.fromkeys("ab", Peak(200e3, 200e3, ()))


def test_one_heated_zone_comes_to_its_level_alone() -> None:
    found = peaks({"a": load(4, 10.0), "b": load(0, 10.0)}, gate("a>b", shuts=250))
    # 2 L through the reducer, 2 of its own 10
    assert share(found["a"]) == 0.2
    assert found["a"].history == (("a",),)
    found = peaks({"a": load(5, 10.0), "b": load(0, 10.0)}, gate("a>b", shuts=250))
    assert (share(found["a"]), share(found["b"])) == (0.3, 0.2)
    assert found["b"].history == (("a",),)


def test_zone_alone_without_a_tank_comes_to_no_end() -> None:
    assert peaks({"a": load(4)}) == {"a": Peak(math.inf, math.inf, (("a",),))}


def test_together_is_worse_than_every_order() -> None:
    # z without a tank above w1 and w2, both above w3, 20 L each; 0.05, 3 and 3 L.  Source: own study.
    # All at once: 6.05 into 60 L.  In every order w3 fills first and one of w1 and w2 is left lower: w1 3 into 40,
    # w2 1.5 into its own and 1.5 into 40, and z only into the 20 L of w1: 0.075 and 0.05 / 20.
    loads = {"z": load(0.05), "w1": load(3, 20.0), "w2": load(3, 20.0), "w3": load(0, 20.0)}
    gates = ("z>w1", "z>w2", "w1>w3", "w2>w3")
    found = peaks(loads, *gates)
    assert share(found["z"]) == pytest.approx(6.05 / 60)
    assert found["z"].history == (("z", "w1", "w2"),)
    played = zones(loads, *gates)
    state = played.cold
    for zone in ("w1", "w2", "z"):
        state = played.after(state, zone, played.growth_m3[zone])
    assert 1.0 - 200e3 / state["z"] == pytest.approx(0.075 + 0.05 / 20)


def test_zone_above_another_is_worst_with_all_at_once() -> None:
    # 4 alone into 20 L is 0.2, all 5 are 0.25
    found = peaks({"above": load(4, 10.0), "below": load(1, 10.0)}, "above>below")
    assert share(found["above"]) == 0.25
    assert found["above"].in_any_order


def test_zone_with_a_tank_large_enough_is_not_lifted_by_what_lies_below() -> None:
    # above 1 of 10 L, below 5 of 10 L
    found = peaks({"above": load(1, 10.0), "below": load(5, 10.0)}, "above>below")
    assert share(found["above"]) == 0.1
    assert share(found["below"]) == pytest.approx(0.05 + 0.5)


def test_circle_is_one_pool() -> None:
    found = peaks({"a": load(4, 10.0), "b": load(1, 10.0)}, "a>b", "b>a")
    assert (share(found["a"]), share(found["b"])) == (0.25, 0.25)


# Where somebody pushes from outside


def test_zone_below_is_worst_after_the_one_above() -> None:
    # 4 into 20 L, then 1 into 10
    found = peaks({"above": load(4, 10.0), "below": load(1, 10.0)}, "above>below")
    assert (share(found["below"]), found["below"].history) == (0.3, order("above below"))


def test_solar_preheater_before_a_store() -> None:
    # 400 and 300 L from 10 to 60 degC, 400 kPa: 6.72 and 5.04 L.  Source: own study, which counts in water that gives
    # way a little: 589.0, 629.4, 692.5, 526.9, 490.0 kPa in the store at the worst; all at once 532.7 with the first.
    study = {(80.0, 24.0): 589.0, (40.0, 24.0): 629.4, (18.0, 24.0): 692.5, (80.0, 35.0): 526.9, (80.0, 50.0): 490.0}
    cold = 400 + 101.325
    for (solar_l, store_l), told in study.items():
        loads = {"solar": load(6.72, solar_l, cold=cold), "store": load(5.04, store_l, cold=cold)}
        peak = peaks(loads, "solar>store")["store"]
        assert share(peak, cold=cold) == pytest.approx(6.72 / (solar_l + store_l) + 5.04 / store_l)
        assert peak.history == order("solar store")
        assert peak.reached_abs_pa / 1e3 - 101.325 == pytest.approx(told, rel=3e-3)


def test_store_with_the_only_tank_comes_to_the_same_in_any_order() -> None:
    # 6.72 and 5.04 into 80 L: 486.2 kPa in the study
    cold = 400 + 101.325
    found = peaks({"solar": load(6.72, cold=cold), "store": load(5.04, 80.0, cold=cold)}, "solar>store")
    assert share(found["store"], cold=cold) == pytest.approx(11.76 / 80)
    assert found["store"].in_any_order


def test_two_above_one() -> None:
    # Source: own study.  Side 3 / 26, then top 2 / 8; the other way round only 2 / 8.
    found = peaks({"top": load(2), "side": load(3, 18.0), "low": load(0, 8.0)}, "top>low", "side>low")
    highest = pytest.approx(3 / 26 + 2 / 8)
    assert share(found["top"]) == share(found["low"]) == highest
    assert share(found["side"]) == pytest.approx(1 / 6)
    assert found["low"].history == found["top"].history == order("side top")
    assert found["side"].history == order("top side")


def test_middle_of_three() -> None:
    # Source: own study.  What lies beyond is not always first: 0, 2, 1.
    found = peaks({"0": load(5, 18.0), "1": load(3), "2": load(7, 18.0)}, "0>1", "1>2")
    assert share(found["1"]) == pytest.approx(5 / 36 + 10 / 18)
    assert found["1"].history == order("0 2 1")
    assert share(found["0"]) == pytest.approx(5 / 18)
    assert found["0"].history == (("0", "1", "2"),)


def test_check_that_needs_pressure_to_open_takes_the_zone_above_from_all_at_once() -> None:
    # no tank above: below 4 and 1 into 10 L, above 50 kPa higher
    found = peaks({"above": load(4), "below": load(1, 10.0)}, gate("above>below", 50))
    assert found["above"].reached_abs_pa == pytest.approx(450e3)
    assert found["above"].highest_abs_pa == found["above"].reached_abs_pa
    # below comes to the same in any order; above only if it warms last, or its check shuts at what it came to
    assert found["above"].history == order("below above")
    assert share(found["below"]) == 0.5
    assert found["below"].in_any_order


def test_reducer_takes_the_zone_above_from_all_at_once() -> None:
    # below first, 0.1; above 1 more into below up to 250 kPa, 0.2, and the other 3 into its own 10 L
    found = peaks({"above": load(4, 10.0), "below": load(1, 10.0)}, gate("above>below", shuts=250))
    assert (share(found["above"]), found["above"].history) == (0.3, order("below above"))
    assert (share(found["below"]), found["below"].history) == (0.3, order("above below"))


def test_reducer_shuts_above_and_leaves_no_end() -> None:
    found = peaks({"above": load(4), "below": load(1, 10.0)}, gate("above>below", shuts=250))
    assert found["above"].reached_abs_pa == math.inf
    assert share(found["below"]) == 0.3


def test_outlet_holds_the_zone_above_and_what_it_pushes() -> None:
    found = peaks({"above": load(20, 10.0, lets_go=250), "below": load(1, 10.0)}, "above>below")
    assert (share(found["above"]), share(found["below"])) == (0.2, 0.3)
    assert found["below"].history == order("above below")


def test_full_membrane_above_pushes_all_on() -> None:
    # 1 of the 4 L into the upper membrane; the rest and 1 into 10 L
    found = peaks({"above": load(4, tank(10, most=1)), "below": load(1, 10.0)}, "above>below")
    assert share(found["below"]) == pytest.approx(0.4)


def test_orders_that_come_to_the_same_are_told_as_one_stage() -> None:
    # two heaters, each without a tank, into one tank
    found = peaks({"a": load(1), "b": load(2), "low": load(0, 10.0)}, "a>low", "b>low")
    # the last to warm comes as high as all; the first does not, so its order counts
    assert found["a"].history == order("b a")
    assert found["b"].history == order("a b")
    assert share(found["low"]) == pytest.approx(0.3)


def test_orders_a_hair_apart_come_to_the_same() -> None:
    # above with a tank so small that the order is worth less than a pascal, and with one that is worth several
    # above keeps v * share of its growth: of 1e-5 L some 1e-6 of 10 L and 0.2 Pa; of 1e-2 L some 200 Pa
    for litres, in_any_order in ((1e-5, True), (1e-2, False)):
        found = peaks({"above": load(2, litres), "below": load(2, 10.0)}, "above>below")
        assert found["below"].in_any_order is in_any_order
    assert found["below"].history == order("above below")


# Zones that nothing warms


def test_cold_zone_is_lifted_by_whoever_lifts_it_most_less_what_the_gate_takes() -> None:
    # a comes to 250 kPa, b to 400 and loses 100 of it
    loads = {"a": load(2, 10.0), "b": load(5, 10.0), "end": load()}
    found = peaks(loads, "a>end", gate("b>end", 100))
    assert found["end"].reached_abs_pa == pytest.approx(300e3)
    assert found["end"].highest_abs_pa == pytest.approx(300e3)
    found = peaks(loads, "a>end", gate("b>end", 160))
    assert found["end"].reached_abs_pa == pytest.approx(250e3)


def test_cold_zone_that_nobody_comes_up_to_keeps_its_pressure() -> None:
    loads = {"a": load(2, 10.0), "end": load(0, cold=260)}
    assert peaks(loads, "a>end")["end"] == Peak(260e3, 260e3, ())


def test_of_two_that_lift_alike_the_first_is_told() -> None:
    loads = {"a": load(5, 10.0), "b": load(5, 10.0), "end": load()}
    found = peaks(loads, gate("a>end", 10), gate("b>end", 10))
    assert found["end"].history == found["a"].history
    # of twins without a tank each comes highest after the other
    twins = peaks({"a": load(1), "b": load(1), "low": load(0, 10.0)}, "a>low", "b>low")
    assert twins["a"].reached_abs_pa == twins["b"].reached_abs_pa
    assert twins["low"].history == twins["a"].history == order("b a")


# Companies


def test_heaters_that_share_nothing_are_not_told_of_each_other() -> None:
    found = peaks({"a": load(4, 10.0), "b": load(1, 10.0), "quiet": load()}, "quiet>a", "quiet>b")
    assert (found["a"].history, found["b"].history) == ((("a",),), (("b",),))


class Counted(Neighbours[str]):
    """Neighbours that count how often one of them was made to grow."""

    def after(self, state: State[str], zone: str, growth_m3: float) -> dict[str, float]:
        counts.append(zone)
        return super().after(state, zone, growth_m3)


counts: list[str] = []


def played(heated: int) -> int:
    """How many steps of histories are played for heaters, each with a tank, above one zone."""
    counts.clear()
    names = [f"h{number}" for number in range(heated)]
    loads = {name: load(1 + number / 10, 10.0) for number, name in enumerate(names)} | {"low": load(0, 10.0)}
    Peaks(Counted(loads, [gate(f"{name}>low") for name in names])).of("low")
    return len(counts)


def test_of_five_heated_zones_every_order_is_played_and_each_beginning_once() -> None:
    # 5 + 5 4 + 5 4 3 + 5 4 3 2 + 5 4 3 2 1 beginnings, and each alone for the ceilings
    assert played(5) == 325 + 5
    # of six all would be 1956; three orders for each are no more than 18 of six
    assert played(6) <= 18 * 6 + 6


def test_row_of_six_is_played_from_the_top() -> None:
    # six in a row with 100 L and 10 L of growth: k from the top 10 into the (6 - k) tanks from there; itself last.
    # What lies beyond comes before it, from the far end, and fills its own 100 L: a tenth each.
    names = [str(number) for number in range(6)]
    loads = {name: load(10, 100.0) for name in names}
    found = peaks(loads, *(f"{near}>{far}" for near, far in pairwise(names)))
    above = 0.0
    for place, name in enumerate(names):
        reached = found[name].reached_abs_pa / 1e3
        assert reached == pytest.approx(pressed(above + 0.1))
        assert found[name].highest_abs_pa >= found[name].reached_abs_pa
        if place:
            beyond = names[:place:-1]
            assert found[name].history == order(" ".join([*names[:place], *beyond, name]))
        above += 10 / (100 * (6 - place))


@pytest.mark.parametrize("names", [("top", "side"), ("side", "top")])
def test_of_six_those_above_are_played_both_ways_round(names: tuple[str, str]) -> None:
    # two above one, with three more that meet them only behind a reducer that is shut from the start.
    # side 3 into 18 + 8; top, 1 L, fills that first and then 1 + 8; low 1 into 8.  Any other order leaves less in low.
    above = {"top": load(2, 1.0), "side": load(3, 18.0)}
    beside = {"b1": load(1, 10.0), "b2": load(1, 10.0), "b3": load(1, 10.0), "sink": load(0, 10.0)}
    loads = {name: above[name] for name in names} | {"low": load(1, 8.0)} | beside
    found = peaks(loads, "top>low", "side>low", gate("top>sink", shuts=200), "b1>sink", "b2>sink", "b3>sink")
    assert found["low"].reached_abs_pa / 1e3 == pytest.approx(pressed(3 / 26 + (2 - 3 / 26) / 9 + 1 / 8))
    assert found["low"].history[-3:] == order("side top low")
