import pytest

from plumbnet.network.loops.cycles import FlowArc, Patience, on_ways_round

PUMP = FlowArc(0, 1)
PLENTY = 1_000_000


def arcs(*ways: str) -> list[FlowArc]:
    """The pump, from 0 to 1, and arcs: `1-2` both ways, `1>2` one way."""
    found = [PUMP]
    for way in ways:
        start, end = int(way[0]), int(way[2])
        found += [FlowArc(start, end)] if way[1] == ">" else [FlowArc(start, end), FlowArc(end, start)]
    return found


BARRED = arcs("1-2", "2-0", "2-3", "3-4", "4-0", "3>5", "5>2", "1-0")
"""Water comes to the check from 5 to 2 by 2, where it would meet itself, or by 0, where the round would end."""


def test_edge_is_one_whichever_way_it_leads() -> None:
    assert FlowArc(2, 1, 7).edge == FlowArc(1, 2).edge == (1, 2)


def test_arc_is_a_pipe_by_its_number() -> None:
    assert [FlowArc(1, 2, number).is_pipe for number in (-1, 0, 7)] == [False, True, True]


def test_arcs_of_which_none_is_one_way_are_taken_as_they_are() -> None:
    ring = arcs("1-2", "2-0", "2-3")  # 3 is a dead end, which no block has
    assert on_ways_round(ring, PUMP, Patience(0)) is ring


def test_arc_past_which_no_way_round_leads_is_taken_out() -> None:
    left = on_ways_round(BARRED, PUMP, Patience(PLENTY))
    assert [arc for arc in BARRED if arc not in left] == [FlowArc(3, 5), FlowArc(5, 2)]


def test_arc_that_one_of_two_ways_bars_is_passed_by_the_other() -> None:
    # to 3 by 2 or by 4; the check leads from 3 back to 2, and from 2 on to 0: by 4 a way round passes it
    ring = arcs("1-2", "2-0", "2-3", "1-4", "4-3", "3>5", "5>2")
    assert on_ways_round(ring, PUMP, Patience(PLENTY)) == ring


def test_arcs_that_lead_straight_from_pump_to_pump_are_passed() -> None:
    ring = arcs("1-0", "1>2", "2>0")
    assert on_ways_round(ring, PUMP, Patience(PLENTY)) == ring


def test_one_way_arc_into_the_outlet_or_out_of_the_inlet_is_passed_by_no_way() -> None:
    left = on_ways_round(arcs("1-2", "2-0", "2>3", "3>1", "0>4", "4>2"), PUMP, Patience(PLENTY))
    assert left == arcs("1-2", "2-0")


@pytest.mark.parametrize("steps", [0, 10, 40])
def test_arcs_that_would_cost_more_steps_than_are_left_are_taken_whole(steps: int) -> None:
    assert on_ways_round(BARRED, PUMP, Patience(steps)) is BARRED


def test_steps_are_spent_by_all_that_ask() -> None:
    patience = Patience(100)
    assert [patience.spend(60), patience.spend(40), patience.spend(1)] == [True, True, False]


def test_each_further_way_costs_a_search_from_every_port_of_the_last() -> None:
    # four ways lead to the check from 8 to 9, and it bars all of them
    patience = Patience(PLENTY)
    pairs = [f"{a}-{b}" for a, b in ((2, 3), (2, 4), (3, 5), (4, 5), (5, 6), (5, 7), (6, 8), (7, 8))]
    ring = arcs("1-2", "2-0", *pairs, "8>9", "9>2")
    left = on_ways_round(ring, PUMP, patience)
    assert [arc for arc in ring if arc not in left and arc.start == 8] == [FlowArc(8, 6), FlowArc(8, 7), FlowArc(8, 9)]
    assert PLENTY - 10_000 < patience.steps < PLENTY - 1_000
