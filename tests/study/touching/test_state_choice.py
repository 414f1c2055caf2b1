"""States that are worked out beforehand."""

import pytest
from touched import EVERY_KIND, HOUSE, states_of

from plumbnet.layout.model.event import Sort
from plumbnet.study.touching.state_choice import FEW_STATES, MOST_STATES, HeldStates, held_states
from plumbnet.study.touching.touch_code import Touch, UnknownTouch, code_of


def test_every_state_comes_once_the_first_touchable_changing_most_slowly() -> None:
    held = HeldStates({1: (0, 1), 4: (2,)}, at_once=2)
    assert held.has_all
    assert [code_of(state) for state in held] == ["", "4-2", "1-0", "1-0,4-2", "1-1", "1-1,4-2"]
    assert held.count == 6


def test_with_fewer_at_a_time_the_states_with_more_are_left_out() -> None:
    held = HeldStates({1: (0, 1), 4: (2,), 5: (0,)}, at_once=1)
    assert not held.has_all
    assert [code_of(state) for state in held] == ["", "1-0", "1-1", "4-2", "5-0"]
    assert held.count == 5


@pytest.mark.parametrize("at_once", [1, 2, 3, 4])
def test_count_is_that_of_the_states(at_once: int) -> None:
    held = HeldStates({0: (0,), 1: (0, 1), 2: (1, 2, 3), 5: (0,)}, at_once)
    states = list(held)
    assert len(states) == len(set(states)) == held.count
    assert max(len(state) for state in states) == at_once


def test_what_is_named_is_held_with_all_that_it_may_be() -> None:
    house = states_of(HOUSE)
    held = held_states(house, ["tank", "meter", "split to heater"])
    names = {house.touchables[at].name: len(options) for at, options in held.options.items()}
    assert names == {"meter": 2, "tank": 2, "pipe from split to heater": 5}
    assert (held.has_all, held.count) == (True, 3 * 3 * 6)
    assert "stop" in {house.touchables[at].name for at in held.left_out}


def test_left_to_itself_it_holds_what_alone_changes_an_answer_and_what_a_hand_turns() -> None:
    house = states_of(HOUSE)
    held = held_states(house)
    things = [(house.touchables[at], options) for at, options in held.options.items()]
    words = {one.name: [one.options[each].words for each in options] for one, options in things}
    assert words["tank"] == ["waterlogged", "charge lost"]
    assert words["tank-stop"] == ["shut"]
    assert words["meter"] == ["check stuck open", "exchanged for one without a check"]
    assert held.count <= 512
    assert list(held.options) == sorted(held.options)


def test_tank_that_is_needed_can_be_put_in() -> None:
    trapped = states_of(HOUSE.replace("tank: {kind", "tank: {state: waterlogged, kind"))
    held = held_states(trapped)
    (at,) = (at for at in held.options if trapped.touchables[at].pipe is not None)
    assert (trapped.touchables[at].name, held.options[at]) == ("pipe from split to heater", (4,))
    assert trapped.touchables[at].options[4].sort is Sort.OTHER_DEVICE
    assert trapped.report_in([Touch(at, 4)]).heaters[0].verdict == "controlled"


def test_too_many_for_all_combinations_are_held_a_few_at_a_time() -> None:
    works = states_of(EVERY_KIND)
    names = [one.name for one in works.touchables if one.pipe is None and one.options]
    held = held_states(works, names)
    assert 1 < held.at_once < len(held.options)
    assert held.count <= FEW_STATES
    assert held_states(works, names, at_once=1).at_once == 1


def test_what_nobody_has_time_for_is_refused() -> None:
    works = states_of(EVERY_KIND)
    names = [one.name for one in works.touchables if one.pipe is None and one.options]
    with pytest.raises(UnknownTouch, match=f"at most {MOST_STATES} are held; name fewer things"):
        held_states(works, names, at_once=9)


def test_name_that_nothing_has_is_told_with_the_nearest() -> None:
    with pytest.raises(UnknownTouch, match='nothing of the name "metre" can be touched: did you mean "meter"'):
        held_states(states_of(HOUSE), ["metre"])
