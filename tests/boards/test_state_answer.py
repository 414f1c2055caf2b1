"""What stands in a state, as the page shows it."""

import pytest
from touched import EVERY_KIND, HOUSE, states_of, touches

from plumbnet.boards.state_answer import StateAnswer, board_answer, zone_bits
from plumbnet.layout.model.system import End


def answered(*touched: tuple[str, str], layout: str = HOUSE) -> StateAnswer:
    states = states_of(layout)
    return board_answer(states, touches(states, touched))


def test_answer_has_the_numbers_of_the_sentence_and_what_stops_the_water() -> None:
    (heater,) = answered(("tank-stop", "shut"))["heaters"]
    assert heater["verdict"] == "trapped"
    assert (heater["cold"], heater["limit"], heater["end"], heater["needle"]) == (62.0, 80.0, 150.0, "relief")
    assert heater["ladder"] == [("heater/relief", 150.0, "safety relief")]
    assert (heater["stops"], heater["way"]) == (["meter"], [])


@pytest.mark.parametrize(
    ("touched", "end", "needle"),
    [
        ([], 77.5, "all hot"),
        ([("meter", "exchanged for one without a check")], 62.0, "stays"),
        ([("tank", "waterlogged"), ("heater/relief", "plugged")], None, "nothing opens"),
        ([("heater", "exchanged for a tankless one")], 62.0, "stays"),
    ],
)
def test_needle_stands_where_all_is_hot(touched: list[tuple[str, str]], end: float | None, needle: str) -> None:
    (heater,) = answered(*touched)["heaters"]
    assert (heater["end"], heater["needle"]) == (end, needle)


def test_way_out_is_told_from_the_heater_on() -> None:
    (heater,) = answered(("meter", "exchanged for one without a check"))["heaters"]
    assert (heater["way"][0], heater["way"][-1]) == ("heater", "street")


def test_fault_that_opens_a_way_is_no_cure() -> None:
    without_tank = (
        HOUSE.replace("  tank-stop: valve\n", "")
        .replace("tank-stop -> ", "")
        .replace("tank: {kind", "tank: {state: waterlogged, kind")
    )
    states = states_of(without_tank)
    broken = board_answer(states, touches(states, [("meter", "check stuck open")]))
    (heater,) = broken["heaters"]
    assert (heater["verdict"], heater["by_fault"], broken["faults"]) == ("open", True, ["meter"])
    (fitted,) = board_answer(states, touches(states, [("meter", "exchanged for one without a check")]))["heaters"]
    assert (fitted["verdict"], fitted["by_fault"]) == ("open", False)


def test_fault_that_makes_things_worse_is_told_as_a_fault_alone() -> None:
    answer = answered(("tank", "waterlogged"))
    assert (answer["heaters"][0]["by_fault"], answer["faults"]) == (False, ["tank"])


def test_tank_that_is_cut_off_has_a_mark_of_its_own() -> None:
    assert answered(("tank-stop", "shut"))["cut_off"] == ["tank"]
    assert answered()["cut_off"] == []


def test_only_what_is_drawn_otherwise_has_a_symbol() -> None:
    assert answered()["symbols"] == {}
    assert answered(("stop", "shut"), ("tank", "waterlogged"))["symbols"] == {
        "stop": "shut_valve",
        "tank": "waterlogged_tank",
    }


def test_picture_depends_on_what_was_put_in_alone() -> None:
    states = states_of(HOUSE)
    put_in, turned = touches(states, [("pipe from split to heater", "a check valve"), ("stop", "shut")])
    assert board_answer(states, [turned])["picture"] == ""
    assert board_answer(states, [turned, put_in])["picture"] == board_answer(states, [put_in])["picture"] != ""


def test_zone_has_a_bit_for_each_pipe_and_for_each_part_that_lies_in_it_whole() -> None:
    report = states_of(HOUSE).drawn
    system = report.system
    ports = frozenset({End("stop", "in"), End("street", "out")})
    assert zone_bits(report, ports) == (
        1 << [pipe.start.part for pipe in system.pipes].index("street")
        | 1 << len(system.pipes) + list(system.parts).index("street")
    )


def test_every_heater_of_a_works_is_answered_for() -> None:
    answer = answered(layout=EVERY_KIND)
    assert [heater["name"] for heater in answer["heaters"]] == ["heater", "instant", "boiler"]
    assert all(int(heater["zone"], 16) for heater in answer["heaters"])
