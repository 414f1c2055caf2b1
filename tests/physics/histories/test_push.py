"""Rows of one-way gates: what they lift the last zone to, and the tanks beyond as the first zone feels them."""

import math
from random import Random

import pytest
from on_paper import Gate, gate, tank

from plumbnet.physics.histories.push import Gates, Push, Pushes, as_felt, let_go_abs_pa, lifted_abs_pa, needed_abs_pa
from plumbnet.physics.vessels.tank import Tank, settled_abs_pa

FREE: Pushes = (Push(),)
EITHER: Pushes = (Push(0.0, 300e3), Push(50e3))
"""A reducer set to 300 kPa that opens at once, beside a check that needs 50 kPa."""


def row(*gates: Gate) -> Push:
    push = Push()
    for one in gates:
        push = push.through(one)
    return push


def pushes(start: str, *gates: Gate) -> dict[str, Pushes]:
    return Gates.of(gates).pushes(start)


def felt(one: Tank, rows: Pushes, stands: float) -> list[Tank]:
    return list(as_felt(one, rows, stands * 1e3))


# One row


def test_no_gate_changes_nothing() -> None:
    assert Push().lifts_to_abs_pa(321e3) == 321e3
    assert Push().needs_abs_pa(321e3) == 321e3


def test_what_gates_need_to_open_adds_up() -> None:
    assert row(gate("a>b", 10), gate("b>c", 20)) == Push(30e3)


def test_reducer_behind_a_check_shuts_at_its_set() -> None:
    assert row(gate("a>b", 10), gate("b>c", shuts=300)) == Push(10e3, 300e3)


def test_check_behind_a_reducer_leaves_less_than_its_set() -> None:
    # b stands at 300 at most, so c at 300 - 20
    assert row(gate("a>b", shuts=300), gate("b>c", 20)) == Push(20e3, 280e3)


def test_reducer_that_itself_needs_something_to_open_still_holds_its_set() -> None:
    assert row(gate("a>b", 10, shuts=300)) == Push(10e3, 300e3)


def test_of_two_reducers_the_lower_counts_whichever_comes_first() -> None:
    assert row(gate("a>b", shuts=300), gate("b>c", shuts=280)) == Push(0.0, 280e3)
    assert row(gate("a>b", shuts=280), gate("b>c", shuts=300)) == Push(0.0, 280e3)
    assert row(gate("a>b", shuts=300), gate("b>c", 30, shuts=280)) == Push(30e3, 270e3)


def test_row_lifts_to_what_is_left_and_no_higher_than_the_set() -> None:
    push = Push(10e3, 300e3)
    assert [push.lifts_to_abs_pa(near) for near in (200e3, 309e3, 310e3, 311e3)] == [190e3, 299e3, 300e3, 300e3]
    assert push.lifts_to_abs_pa(math.inf) == 300e3
    assert Push(10e3).lifts_to_abs_pa(math.inf) == math.inf


def test_row_never_lifts_above_its_set_nor_to_more_than_it() -> None:
    push = Push(10e3, 300e3)
    assert push.needs_abs_pa(299e3) == 309e3
    assert push.needs_abs_pa(300e3) == math.inf
    assert push.needs_abs_pa(301e3) == math.inf
    assert Push(10e3).needs_abs_pa(math.inf) == math.inf


@pytest.mark.parametrize(
    ("one", "other", "no_better"),
    [
        (Push(), Push(), True),
        (Push(10e3), Push(), True),
        (Push(), Push(10e3), False),
        (Push(0.0, 300e3), Push(), True),
        (Push(), Push(0.0, 300e3), False),
        (Push(0.0, 300e3), Push(10e3), False),
        (Push(10e3), Push(0.0, 300e3), False),
        (Push(10e3, 300e3), Push(10e3, 301e3), True),
        (Push(10e3, 300e3), Push(9e3, 299e3), False),
    ],
)
def test_row_is_no_better_if_it_opens_no_later_and_shuts_no_sooner(one: Push, other: Push, no_better: bool) -> None:  # noqa: FBT001 - a table's column
    assert one.is_no_better_than(other) is no_better


# Several rows to one zone


def test_whichever_row_lifts_most_counts() -> None:
    assert [lifted_abs_pa(EITHER, near) for near in (250e3, 300e3, 350e3, 360e3)] == [250e3, 300e3, 300e3, 310e3]
    assert lifted_abs_pa(EITHER, math.inf) == math.inf


def test_whichever_row_lifts_first_counts() -> None:
    assert needed_abs_pa(EITHER, 299e3) == 299e3
    assert needed_abs_pa(EITHER, 300e3) == 350e3
    assert needed_abs_pa((Push(0.0, 300e3), Push(20e3, 310e3)), 310e3) == math.inf


# A tank beyond, as the first zone feels it


def test_tank_of_the_zone_itself_is_felt_as_it_is() -> None:
    assert felt(tank(10), FREE, 200) == [tank(10)]


def test_tank_beyond_begins_where_its_zone_stands_by_now() -> None:
    # 10 L at 250 kPa have taken 2 L; at 400 kPa they have taken 5 L, so 3 L more
    (one,) = felt(tank(10), FREE, 250)
    assert one.start_abs_pa == 250e3
    assert one.uptake_m3(400e3) == pytest.approx(3e-3)


def test_tank_beyond_a_check_is_felt_later_by_what_opens_it() -> None:
    # at 450 kPa before a check of 50 kPa the tank stands at 400
    (one,) = felt(tank(10), (Push(50e3),), 200)
    assert (one.start_abs_pa, one.head_pa, one.most_m3) == (250e3, 50e3, None)
    assert one.uptake_m3(450e3) == pytest.approx(5e-3)


def test_height_of_the_tank_and_the_check_add_up() -> None:
    (one,) = felt(Tank(0.01, 100e3, 200e3, None, 100e3), (Push(50e3),), 200)
    # at 350 kPa before the check 300 at datum, 200 at the tank: half of 10 L
    assert one.head_pa == 150e3
    assert one.uptake_m3(350e3) == pytest.approx(5e-3)


def test_tank_beyond_a_reducer_takes_no_more_once_that_shuts() -> None:
    # at 250 kPa the tank holds 2 L
    (one,) = felt(tank(10), (Push(0.0, 250e3),), 200)
    assert one.most_m3 == pytest.approx(2e-3)
    assert one.uptake_m3(900e3) == pytest.approx(2e-3)


def test_reducer_does_not_let_more_through_than_the_membrane_takes() -> None:
    assert felt(tank(10, most=1), (Push(0.0, 250e3),), 200)[0].most_m3 == 1e-3
    assert felt(tank(10, most=3), (Push(0.0, 250e3),), 200)[0].most_m3 == pytest.approx(2e-3)
    assert felt(tank(10, most=1), FREE, 200)[0].most_m3 == 1e-3


def test_reducer_that_has_shut_leaves_nothing_to_feel() -> None:
    assert felt(tank(10), (Push(0.0, 250e3),), 250) == []
    assert felt(tank(10), (Push(0.0, 250e3),), 251) == []
    assert len(felt(tank(10), (Push(0.0, 250e3),), 249)) == 1


def test_tank_charged_above_the_reducers_set_takes_nothing_through_it() -> None:
    (one,) = felt(tank(10, charge=260), (Push(0.0, 250e3),), 200)
    assert one.most_m3 == 0.0
    assert one.uptake_m3(math.inf) == 0.0


@pytest.mark.parametrize("rows", [EITHER, EITHER[::-1]])
def test_two_rows_are_felt_one_after_the_other(rows: Pushes) -> None:
    # by the reducer up to 300 kPa: 3.333 L; then nothing until the check opens at 350; at 450 it stands at 400: 5 L
    parts = felt(tank(10), rows, 200)
    taken = [sum(one.uptake_m3(near) for one in parts) for near in (200e3, 300e3, 340e3, 350e3, 450e3)]
    assert taken == pytest.approx([0.0, 10e-3 / 3, 10e-3 / 3, 10e-3 / 3, 5e-3])
    assert settled_abs_pa(5e-3, parts) == pytest.approx(450e3)


def test_of_two_rows_one_that_has_shut_is_passed_over() -> None:
    (one,) = felt(tank(10), EITHER, 320)
    assert (one.start_abs_pa, one.most_m3) == (370e3, None)


# Where water of a zone can push


def test_zone_pushes_into_itself_first() -> None:
    assert pushes("a") == {"a": FREE}
    assert list(pushes("b", gate("b>a"))) == ["b", "a"]


def test_gates_are_passed_in_their_direction_only() -> None:
    gates = gate("a>b", 10), gate("b>c", 20)
    assert pushes("a", *gates) == {"a": FREE, "b": (Push(10e3),), "c": (Push(30e3),)}
    assert pushes("b", *gates) == {"b": FREE, "c": (Push(20e3),)}
    assert pushes("c", *gates) == {"c": FREE}


def test_of_two_ways_the_one_that_opens_first_counts() -> None:
    # a > b > d needs 30, a > c > d needs 20
    gates = gate("a>b", 10), gate("a>c", 15), gate("b>d", 20), gate("c>d", 5)
    assert pushes("a", *gates)["d"] == (Push(20e3),)
    assert pushes("a", *gates[::-1])["d"] == (Push(20e3),)


def test_better_way_found_later_is_carried_on() -> None:
    # straight to d needs 40 and is found first; round by b and c 20; e lies behind d
    gates = gate("a>d", 40), gate("d>e", 1), gate("a>b", 10), gate("b>c", 5), gate("c>d", 5)
    assert pushes("a", *gates)["d"] == (Push(20e3),)
    assert pushes("a", *gates)["e"] == (Push(21e3),)


def test_reducer_beside_a_check_keeps_both_rows_and_so_does_what_lies_behind() -> None:
    gates = gate("a>b", shuts=300), gate("a>b", 50), gate("b>c", 10)
    assert pushes("a", *gates)["b"] == EITHER
    assert pushes("a", *gates)["c"] == (Push(10e3, 290e3), Push(60e3))


def test_reducer_beside_a_check_that_opens_at_once_is_left_out() -> None:
    for gates in ((gate("a>b", shuts=300), gate("a>b")), (gate("a>b"), gate("a>b", shuts=300))):
        assert pushes("a", *gates)["b"] == FREE


def test_equal_ways_count_once() -> None:
    assert pushes("a", gate("a>b", 5), gate("a>b", 5))["b"] == (Push(5e3),)


def test_gates_in_a_circle_come_to_an_end() -> None:
    gates = gate("a>b", 10), gate("b>c", 10), gate("c>a", 10)
    assert pushes("b", *gates) == {"b": FREE, "c": (Push(10e3),), "a": (Push(20e3),)}


def test_circle_that_gives_more_than_it_takes_is_gone_round_once() -> None:
    # a pump between b and c opens 30 kPa early: round and round the row would look better each time
    gates = gate("a>b", 10), gate("b>c", -30), gate("c>b", 5), gate("c>d")
    assert pushes("a", *gates) == {"a": FREE, "b": (Push(10e3),), "c": (Push(-20e3),), "d": (Push(-20e3),)}
    assert pushes("b", *gates) == {"b": FREE, "c": (Push(-30e3),), "d": (Push(-30e3),)}


# Where outlets let go


@pytest.mark.parametrize("seed", range(40))
def test_zone_lets_go_at_the_first_outlet_in_its_reach(seed: int) -> None:
    random = Random(seed)  # noqa: S311  # gates, not a secret
    names = "abcdef"[: random.randint(1, 6)]
    gates = [
        gate(f"{near}>{far}", random.choice([0, 10, 25]), shuts=random.choice([260.0, 300.0, math.inf]))
        for near in names
        for far in names
        if near != far and random.random() < 0.35
    ]
    own = {zone: random.choice([250e3, 270e3, 320e3, math.inf]) for zone in names}
    found = let_go_abs_pa(own, gates)
    for zone in names:
        rows = Gates.of(gates).pushes(zone)
        assert found[zone] == pytest.approx(min(needed_abs_pa(row, own[far]) for far, row in rows.items()))
