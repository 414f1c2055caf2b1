"""What no history passes: each of the three steps where it decides, with levels worked out by Boyle's law on paper.

A level is given by the share of the gas that is pressed away there; a tank of 10 L takes 1 L for each tenth. Ceilings
are sought as if nothing had been reached yet, unless a test says otherwise.
"""

import math

import pytest
from on_paper import Gate, gate, load, pressed, tank, zones

from plumbnet.physics.equilibrium.equilibrium import ZoneLoad
from plumbnet.physics.histories.ceiling import CEILING_CLOSE_PA, Ceilings, is_as_high
from plumbnet.physics.histories.neighbours import Neighbours


def ceilings(all_zones: Neighbours[str], **told: float) -> dict[str, float]:
    """Share that is pressed away at the ceiling of each heated zone, told what some were found to come to, in kPa."""
    reached = all_zones.cold | {zone: level * 1e3 for zone, level in told.items()}
    found = Ceilings(all_zones, tuple(all_zones.growth_m3)).found(reached)
    return {zone: 1.0 - all_zones.cold[zone] / level for zone, level in found.items()}


def shares(**expected: float) -> dict[str, object]:
    return {zone: pytest.approx(share, abs=1e-7) for zone, share in expected.items()}


def joined(loads: dict[str, ZoneLoad], *gates: Gate | str) -> dict[str, float]:
    return ceilings(zones(loads, *gates))


# One company, nothing outside: growth against room


def test_zone_alone_comes_to_where_its_tank_has_taken_its_growth() -> None:
    assert joined({"a": load(4, 10.0)}) == shares(a=0.4)


def test_zone_with_no_room_for_its_growth_has_no_ceiling() -> None:
    assert joined({"a": load(11, 10.0)}) == {"a": 1.0}
    assert joined({"a": load(1)}) == {"a": 1.0}
    assert joined({"a": load(3, tank(10, most=2))}) == {"a": 1.0}


def test_zone_that_pushes_into_another_has_lifted_it_too() -> None:
    # above: 4 and 1 into 20 L if all is there, and below: 4 into both first, then 1 into its own 10 L
    assert joined({"above": load(4, 10.0), "below": load(1, 10.0)}, "above>below") == shares(above=0.25, below=0.3)


def test_what_a_check_needs_to_open_is_left_to_the_zone_before_it() -> None:
    # above without a tank stands 50 kPa over below, and below comes to half of 10 L
    found = joined({"above": load(4), "below": load(1, 10.0)}, gate("above>below", 50))
    assert found == shares(above=1 - 200 / 450, below=0.5)


def test_outlet_in_reach_is_the_ceiling_where_growth_could_do_more() -> None:
    # 250 kPa presses two tenths away; below has its own growth on top of that
    assert joined({"above": load(20, 10.0, lets_go=250), "below": load(1, 10.0)}, "above>below") == shares(
        above=0.2, below=0.3
    )
    # an outlet below holds both
    assert joined({"above": load(20, 10.0), "below": load(1, 10.0, lets_go=250)}, "above>below") == shares(
        above=0.2, below=0.2
    )
    # and one that lies beyond the level changes nothing
    assert joined({"above": load(4, 10.0), "below": load(1, 10.0, lets_go=400)}, "above>below") == shares(
        above=0.25, below=0.3
    )


# The first step: no zone ends lower than any one heater alone lifts it


def test_water_that_the_zone_above_keeps_in_its_own_tank_is_not_there_for_the_zone_below() -> None:
    # solar preheater of 400 L before a store of 300 L, 10 to 60 degC: 6.72 and 5.04 L.  Source: own study.
    # The preheater keeps 80 / 104 of its 6.72 in every history, so that the store has 6.72 * 24 / 104 and its own 5.04.
    loads = {"solar": load(6.72, 80.0), "store": load(5.04, 24.0)}
    assert joined(loads, "solar>store") == shares(solar=6.72 / 80, store=6.72 / 104 + 5.04 / 24)


def test_zone_beside_takes_its_part_of_what_is_pushed() -> None:
    # u without a tank pushes 4 into z and e alike; 2 of it stay in e
    loads = {"u": load(4), "z": load(1, 10.0), "e": load(0, 10.0)}
    assert joined(loads, "u>z", "u>e") == shares(u=0.25, z=0.3)


def test_zone_beside_that_warms_leaves_more_of_what_is_pushed() -> None:
    # e first: 1; u: z to 1 as well, then 3 into both: 2.5; z: 1 more
    loads = {"u": load(4), "z": load(1, 10.0), "e": load(1, 10.0)}
    assert joined(loads, "u>z", "u>e")["z"] == pytest.approx(0.35, abs=1e-7)


# The second: growth fills another zone only up to what its own zone lifts it to


def test_reducer_lets_another_zone_fill_up_to_its_set_and_no_further() -> None:
    # up to 250 kPa, two tenths, from above; then 1 L of its own.  Above, once the reducer shut: 5 less the 2 beyond.
    loads = {"above": load(4, 10.0), "below": load(1, 10.0)}
    assert joined(loads, gate("above>below", shuts=250)) == shares(above=0.3, below=0.3)


def test_reducer_counts_where_nobody_pushes_from_outside() -> None:
    # in a circle: z pushes into w, and w back into z up to 230 kPa, 1.304 L, to which z adds 1 of its own.
    # Together they have 6 L for 20, three tenths; so much is there, but z is not filled with it.
    loads = {"z": load(1, 10.0), "w": load(5, 10.0)}
    found = joined(loads, "z>w", gate("w>z", shuts=230))
    assert found["z"] == pytest.approx(1 - 200 / 230 + 0.1, abs=1e-7)


@pytest.mark.parametrize(("others", "share"), [(23, (1 + 23 * 5) / 240), (24, 1.0)])
def test_of_many_heated_zones_all_growth_is_held_against_all_room_and_of_more_than_two_dozen_none(
    others: int, share: float
) -> None:
    # the same circle with many: of 24 all growth may come anywhere, of 25 all may come to where the first outlet opens
    names = [f"w{number}" for number in range(others)]
    circle = zones(
        {"z": load(1, 10.0)} | {name: load(5, 10.0) for name in names},
        *(f"z>{name}" for name in names),
        *(gate(f"{name}>z", shuts=230) for name in names),
    )
    assert ceilings(circle, **dict.fromkeys(names, math.inf))["z"] == pytest.approx(share, abs=1e-7)


# The third: the last to push from outside must have stood so high, and all it reaches with it


def test_last_to_push_from_outside_has_filled_its_own_tank() -> None:
    # u and v above z, all with 10 L.  z: u 4 into 20, v 2 into its own and 2 into 20: three tenths; 1 of its own.
    # Without the third step u and v could leave 2 each in their own tanks and z had five tenths.
    # u: v 4 into 20, z 1 into its own: three tenths; u 3 into its own and 1 into 20.
    loads = {"u": load(4, 10.0), "v": load(4, 10.0), "z": load(1, 10.0)}
    assert joined(loads, "u>z", "v>z") == shares(u=0.35, v=0.35, z=0.4)


def test_last_to_push_has_lifted_what_lies_beside_as_well() -> None:
    # u without a tank, v as above; beside u lies e with 10 L.  u last: it stands where z then stands, and e too.
    # v 4 into 20: two tenths; u: 2 into e, then 2 into 20: three tenths; z: four.
    loads = {"u": load(4), "v": load(4, 10.0), "z": load(1, 10.0), "e": load(0, 10.0)}
    assert joined(loads, "u>z", "v>z", "u>e")["z"] == pytest.approx(0.4, abs=1e-7)


def test_outlet_beside_the_last_to_push_ends_what_it_lifts() -> None:
    # u has growth for anything, but e lets it out at 250 kPa: two tenths, and 1 L of z on top
    loads = {"u": load(20), "z": load(1, 10.0), "e": load(0, lets_go=250)}
    assert joined(loads, "u>z", "u>e") == shares(u=0.2, z=0.3)


def test_two_above_one_come_higher_in_the_other_order() -> None:
    # top without a tank grows by 2, side with 18 L by 3, into 8 L below.  Source: own study, two above one.
    # top after side: 3 / 26 and 2 / 8.  side after top: its own 18 L alone, as the lower stands at a quarter.
    loads = {"top": load(2), "side": load(3, 18.0), "low": load(0, 8.0)}
    assert joined(loads, "top>low", "side>low") == shares(top=3 / 26 + 2 / 8, side=3 / 18)


def test_middle_of_three_comes_highest_between_the_others() -> None:
    # 0 > 1 > 2 with 18, none and 18 L, growth 5, 3 and 7.  Source: own study, middle of three.
    # 0 into 36; 2 into its own 18; 1 into those 18
    loads = {"0": load(5, 18.0), "1": load(3), "2": load(7, 18.0)}
    highest = 5 / 36 + 7 / 18 + 3 / 18
    assert joined(loads, "0>1", "1>2") == shares(**{"0": 5 / 18, "1": highest, "2": highest})


def test_check_before_the_last_push_is_paid_for() -> None:
    # 4 into u at p and z at p - 20: u has taken x, z 4 - x (kPa, tenths); then 1 of its own on top
    loads = {"u": load(4, 10.0), "z": load(1, 10.0)}
    low, high = 0.0, 0.4
    for _ in range(60):
        share = (low + high) / 2
        low, high = (share, high) if pressed(0.4 - share) > pressed(share) + 20 else (low, share)
    assert joined(loads, gate("u>z", 20))["z"] == pytest.approx(low + 0.1, abs=1e-6)


# What was reached


def test_ceiling_is_what_was_reached_where_no_history_can_do_more() -> None:
    loads = {"above": load(4, 10.0), "below": load(1, 10.0)}
    row = zones(loads, "above>below")
    told = {"above": pressed(0.25), "below": pressed(0.3)}
    found = Ceilings(row, ("above", "below")).found({zone: level * 1e3 for zone, level in told.items()})
    assert found == {zone: level * 1e3 for zone, level in told.items()}


def test_ceiling_is_never_below_what_was_reached() -> None:
    loads = {"above": load(4, 10.0), "below": load(1, 10.0)}
    found = ceilings(zones(loads, "above>below"), below=pressed(0.35))
    assert found["below"] == pytest.approx(0.35, abs=1e-12)


def test_ceiling_of_what_was_found_without_end_has_none() -> None:
    loads = {"above": load(11, 5.0), "below": load(1, 5.0)}
    assert ceilings(zones(loads, "above>below"), above=math.inf, below=math.inf) == {"above": 1.0, "below": 1.0}


def test_ceilings_are_alike_to_what_they_are_sought_to_however_high_the_datum() -> None:
    for level in (2e5, 1.5e7):
        assert is_as_high(level, level + 0.5 * CEILING_CLOSE_PA)
        assert not is_as_high(level, level + 3.0 * CEILING_CLOSE_PA)
        assert is_as_high(level + 1.5 * CEILING_CLOSE_PA, level, 2.0)
    assert is_as_high(1e15, 1e15 + 500.0)
    assert is_as_high(math.inf, math.inf)
    assert not is_as_high(math.inf, 2e5)
    assert not is_as_high(2e5, math.inf)


def test_search_ends_where_no_number_lies_between_two_others() -> None:
    almost_full = joined({"a": load(9.99999999999, tank(10.0))})
    assert almost_full["a"] == pytest.approx(1.0)
