"""Orders in which heated zones warm, each played, worked out by Boyle's law on paper."""

import pytest
from on_paper import load, pressed, zones

from plumbnet.physics.histories.plays import Plays


def plays() -> Plays[str]:
    """Above a check 2 L grow beside 10 L of gas, below it 1 L."""
    return Plays(zones({"above": load(2, 10.0), "below": load(1, 10.0)}, "above>below"), ("above", "below"))


def test_worst_order_is_told_of_each_zone() -> None:
    found = plays().reached
    # below alone is pressed by 1 in 10 L; warmed after the one above, which has put 1 of its 2 there, by 2 in 10
    level, history, in_any_order = found["below"]
    assert level / 1e3 == pytest.approx(pressed(0.2))
    assert (history, in_any_order) == ((("above",), ("below",)), False)
    # above, last: 1 L below has lifted that to pressed(0.1), and 2 L have 20 L that hold 1
    assert found["above"][0] / 1e3 == pytest.approx(pressed(0.15))


def test_level_is_passed_or_not_whatever_was_asked_before() -> None:
    found = plays()
    for zone, share in (("below", 0.19), ("below", 0.21), ("above", 0.14), ("above", 0.16), ("below", 0.19)):
        top = {"below": 0.2, "above": 0.15}[zone]
        assert found.passes(zone, pressed(share) * 1e3) is (share < top), (zone, share)
    assert found.reached["below"] == plays().reached["below"]


def test_no_more_orders_are_played_than_it_takes_to_tell() -> None:
    found = plays()
    assert found.passes("above", pressed(0.05) * 1e3)
    assert found.neighbours.budget.spent == 3  # one order, which lifts two zones and then one
    assert found.passes("below", 0.0)
    assert found.neighbours.budget.spent == 3
    assert not found.passes("below", pressed(0.3) * 1e3)
    assert found.neighbours.budget.spent == 6


def test_very_many_zones_are_lifted_one_after_the_other() -> None:
    # more than a function may call itself; nothing lies beyond any of them, so that each comes to its own
    names = [f"z{number}" for number in range(1_100)]
    many = zones({name: load(1, 10.0) for name in names})
    level, history, _ = Plays(many, tuple(names)).reached["z7"]
    assert level / 1e3 == pytest.approx(pressed(0.1))
    assert len(history) == len(names)
