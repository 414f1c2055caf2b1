"""The picture of a state."""

import json
import re
from typing import Any

import pytest
from hotel import hotel
from touched import EVERY_KIND, HOUSE, states_of, touches

from plumbnet.boards.state_picture import board_picture


def pictured(*touched: tuple[str, str], layout: str = HOUSE) -> dict[str, Any]:
    states = states_of(layout)
    return board_picture(states, touches(states, touched))


def test_picture_of_a_state_is_that_of_the_layout_as_drawn_unless_something_is_put_in() -> None:
    drawn = pictured()
    assert (
        pictured(("stop", "shut"), ("meter", "exchanged for one without a check"), ("street", "pressure=70")) == drawn
    )
    assert pictured(("pipe from split to heater", "a check valve")) != drawn


def test_symbols_of_every_state_are_in_it() -> None:
    symbols = set(re.findall(r'data-symbol="(\w+)"', pictured()["svg"]))
    assert {
        "valve",
        "shut_valve",
        "checked_meter",
        "meter",
        "waterlogged_tank",
        "tankless_heater",
        "running_fixture",
    } <= symbols


def test_what_is_put_in_is_touched_by_its_pipe() -> None:
    states = states_of(HOUSE)
    (put_in,) = touches(states, [("pipe from split to heater", "a tank of 2 gal, charged to 62 psi")])
    picture: Any = board_picture(states, [put_in])
    assert picture["touch_of"]["parts"]["split-tank"] == put_in.at
    halves = [number for number, ends in enumerate(picture["pipes"]) if "split-tank-tee" in ends]
    assert {picture["touch_of"]["pipes"][str(number)] for number in halves} == {put_in.at}


def test_pipes_that_nothing_was_put_into_keep_what_they_are_touched_by() -> None:
    states = states_of(HOUSE)
    (put_in,) = touches(states, [("pipe from street to stop", "a check valve")])
    for state in ((), (put_in,)):
        picture: Any = board_picture(states, state)
        for number, at in picture["touch_of"]["pipes"].items():
            start, end = picture["pipes"][int(number)]
            if "street-check" not in {start, end}:
                assert states.touchables[at].name == f"pipe from {start} to {end}"


def test_names_stand_beside_devices_and_not_beside_taps_and_joints() -> None:
    names = re.findall(r'<text class="name"[^>]*>([^<]*)</text>', pictured()["svg"])
    assert names == ["street", "stop", "meter", "tank-stop", "tank", "heater"] or sorted(names) == sorted(
        ["street", "stop", "meter", "tank-stop", "tank", "heater"]
    )


@pytest.mark.parametrize("layout", [HOUSE, EVERY_KIND])
def test_picture_is_json_of_a_moderate_size_and_the_same_each_time(layout: str) -> None:
    text = json.dumps(pictured(layout=layout), allow_nan=False)
    assert text == json.dumps(pictured(layout=layout))
    assert len(text) < 150_000


def test_quiet_branches_of_a_large_layout_are_one_symbol_each_with_their_count() -> None:
    picture: Any = board_picture(states_of(hotel(60)), ())
    assert "parts, folded" in picture["svg"]
    assert len(picture["order"]) < len(picture["parts"])
    assert set(picture["order"]) - {name for name, _ in picture["parts"]}
    assert len(picture["touch_of"]["parts"]) > len(picture["order"])
