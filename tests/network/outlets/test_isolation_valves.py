import pytest
from conftest import PSI, drawn

from plumbnet.network.outlets import isolation_valves as closing
from plumbnet.network.outlets.isolation_valves import MOST_CLOSINGS

RING = """street -> tee1
tee1 -> valve1 -> tee2
tee1 -> valve2 -> tee3
tee2 -> valve3 -> tee3
tee2 -> heater1
tee3 -> heater2"""
"""
street - tee1 - valve1 - tee2 - heater1
           |              |
         valve2         valve3
           +---- tee3 ----+
                  |
               heater2
"""


def test_valve_in_the_only_way_closes_it() -> None:
    assert drawn("street -> meter -> valve -> heater").closings("heater", 80) == (("valve",),)


def test_each_valve_in_a_row_closes_it_alone() -> None:
    d = drawn("street -> valve1 -> valve2 -> heater -> valve3 -> tap.hot")
    assert d.closings("heater", 80) == (("valve1",), ("valve2",))


def test_locked_valve_is_not_shut_by_mistake() -> None:
    assert drawn("street -> valve -> heater", valve="locked: true").closings("heater", 80) == ()


def test_valve_with_a_pipe_round_it_closes_nothing() -> None:
    assert drawn("street -> tee1 -> valve -> tee2 -> heater\ntee1 -> tee2").closings("heater", 80) == ()


def test_tank_on_the_heater_side_of_the_valve_takes_its_place() -> None:
    #                       tank charged to 70
    # street - valve1 - tee1 -+- heater
    d = drawn("street -> valve1 -> tee1 -> heater\ntee1 -> tank", tank="precharge: 70 psi")
    assert d.closings("heater", 80) == ()
    assert d.closings("heater", 65) == (("valve1",),)


def test_relief_valve_is_no_outlet_to_count_on() -> None:
    d = drawn("street -> valve -> heater", heater="relief: {pressure: 75 psi}")
    assert d.closings("heater", 80) == (("valve",),)


def test_expansion_relief_below_the_limit_counts() -> None:
    runs = "street -> valve -> tee1 -> heater\ntee1 -> spill"
    assert drawn(runs, spill="pressure: 75 psi").closings("heater", 80) == ()
    assert drawn(runs, spill="pressure: 85 psi").closings("heater", 80) == (("valve",),)


def test_ring_main_needs_two_valves_shut() -> None:
    d = drawn(RING)
    assert d.closings("heater1", 80) == (("valve1", "valve2"), ("valve1", "valve3"))
    assert d.closings("heater2", 80) == (("valve1", "valve2"), ("valve2", "valve3"))


def test_valve_to_the_tank_and_valve_to_the_street_make_a_pair() -> None:
    d = drawn("street -> valve1 -> tee1 -> heater\ntee1 -> valve2 -> tank")
    assert d.closings("heater", 80) == (("valve1", "valve2"),)


def test_valve_that_isolates_the_tank_behind_a_check_closes_it() -> None:
    d = drawn("street -> cv -> tee1 -> heater\ntee1 -> valve -> tank")
    assert d.closings("heater", 80) == (("valve",),)


def test_closed_heater_has_no_valve_that_closes_it() -> None:
    assert drawn("street -> cv -> valve -> heater").closings("heater", 80) == ()


def test_open_valve_round_a_check_is_what_keeps_it_open() -> None:
    #          +-- cv -> --+
    # street - +           + - heater
    #          +-- valve --+
    d = drawn("street -> tee1 -> cv -> tee2 -> heater\ntee1 -> valve -> tee2")
    assert d.closings("heater", 80) == (("valve",),)


def test_check_that_lets_water_out_beside_the_valve_keeps_it_open() -> None:
    #          +-- <- cv --+
    # street - +           + - heater
    #          +-- valve --+
    d = drawn("street -> tee1 -> valve -> tee2 -> heater\ntee2 -> cv -> tee1")
    assert d.closings("heater", 80) == ()


def test_bypass_beside_the_valve_keeps_it_open() -> None:
    d = drawn("street -> tee1 -> valve -> tee2 -> heater\ntee1 -> prv -> tee2", prv="bypass: true")
    assert d.closings("heater", 80) == ()


def test_crossover_at_a_tap_is_a_way_no_hand_shuts() -> None:
    # street - tee1 - valve - heater - tap - and by its crossover back to tee1
    d = drawn("street -> tee1 -> valve -> heater -> tap.hot\ntee1 -> tap.cold", tap="crossover: true")
    assert d.closings("heater", 80) == ()


def test_gate_that_opens_above_the_limit_is_no_way() -> None:
    # back to a main at 90 by the bypass, or by the valve to one at 60
    d = drawn(
        "street1 -> prv -> tee1 -> heater\ntee1 -> valve -> street2", street1="pressure: 90 psi", prv="bypass: true"
    )
    assert d.closings("heater", 80) == (("valve",),)
    assert d.closings("heater", 95) == ()


def test_valves_on_both_sides_of_a_gate_close_it() -> None:
    d = drawn("street1 -> cv1 -> heater -> valve1 -> cv2 -> valve2 -> street2")
    assert d.closings("heater", 80) == (("valve1",), ("valve2",))


def test_singles_come_before_pairs() -> None:
    d = drawn("street -> valve1 -> tee1 -> valve2 -> tee2 -> heater\ntee1 -> valve3 -> tee2")
    assert d.closings("heater", 80) == (("valve1",), ("valve2", "valve3"))


def test_sets_of_valves_are_cut_short_at_sixteen() -> None:
    one = " -> ".join(f"valve1{n}" for n in range(5))
    two = " -> ".join(f"valve2{n}" for n in range(5))
    d = drawn(f"street -> tee1 -> {one} -> tee2 -> heater\ntee1 -> {two} -> tee2")
    sets = d.closings("heater", 80)
    assert len(sets) == MOST_CLOSINGS
    assert all(first.startswith("valve1") and second.startswith("valve2") for first, second in sets)


def test_more_pairs_than_can_be_searched_are_owned_up_to() -> None:
    # two ways of 300 valves each, with a rung of valves between them at every step: no pair closes it
    rungs = "\n".join(f"tee1{n} -> valve3{n} -> tee2{n}" for n in range(300))
    rails = "\n".join(f"tee{k}{n} -> valve{k}{n} -> tee{k}{n + 1}" for k in (1, 2) for n in range(300))
    d = drawn(f"street -> tee10\n{rungs}\n{rails}\ntee1300 -> heater\ntee2300 -> heater.return")
    closings = d.network.closings(d.node("heater"), 80 * PSI)
    assert not closings.complete


def test_valve_behind_one_that_has_a_pipe_round_it_still_closes() -> None:
    d = drawn("street -> tee1 -> valve1 -> tee2 -> valve2 -> heater\ntee1 -> tee2")
    assert d.closings("heater", 80) == (("valve2",),)


def test_main_above_the_limit_is_a_way_out_that_a_valve_closes() -> None:
    assert drawn("street -> valve -> heater", street="pressure: 90 psi").closings("heater", 80) == (("valve",),)


def test_gate_that_opens_at_the_very_limit_is_a_way() -> None:
    d = drawn("well -> heater -> valve -> cv -> street", street="pressure: 70 psi")
    assert d.network.closings(d.node("heater"), d.network.standing.at(d.zone("street"))).sets == (("valve",),)


def test_three_ways_side_by_side_are_not_closed_by_two_valves() -> None:
    d = drawn("street -> tee1 -> valve1 -> tee2 -> heater\ntee1 -> valve2 -> tee2\ntee1 -> valve3 -> tee2")
    assert d.closings("heater", 80) == ()


@pytest.mark.parametrize(("alone", "pairs"), [(14, 2), (16, 0)])
def test_pairs_fill_up_what_single_valves_leave_of_the_sixteen(alone: int, pairs: int) -> None:
    # street - alone valves in a row - two ways of two valves each (four pairs) - heater
    row = " -> ".join(f"valve0{n}" for n in range(alone))
    d = drawn(f"street -> {row} -> tee1 -> valve11 -> valve12 -> tee2 -> heater\ntee1 -> valve21 -> valve22 -> tee2")
    assert [len(each) for each in d.closings("heater", 80)] == [1] * alone + [2] * pairs


@pytest.mark.parametrize(
    ("most", "sets", "is_complete"), [(6, (("valve1", "valve2"),), True), (5, (), False), (4, (), False)]
)
def test_search_for_pairs_ends_after_its_last_visit(
    monkeypatch: pytest.MonkeyPatch, most: int, sets: tuple[tuple[str, ...], ...], *, is_complete: bool
) -> None:
    # Two valves side by side are both looked at three times: with none shut, with the first shut, with both.
    monkeypatch.setattr(closing, "MOST_VISITS", most)
    d = drawn("street -> tee1 -> valve1 -> tee2 -> heater\ntee1 -> valve2 -> tee2")
    closings = d.network.closings(d.node("heater"), 80 * PSI)
    assert (closings.sets, closings.complete) == (sets, is_complete)
