"""The heat-up of a state, as the page plays it."""

from itertools import pairwise

import pytest
from touched import HOUSE, touch

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.warmup.heater_warmup import NoWarmUp
from plumbnet.boards.heat_up import HeatUpTold, heat_up
from plumbnet.boards.one_board import OneBoard, refused_or
from plumbnet.study.touching.touch_code import code_of


def board(text: str = HOUSE) -> OneBoard:
    return OneBoard(plumbnet.check(plumbnet.read_bytes(text.encode())))


def shut() -> Report:
    own = board()
    return own.states.report_in([touch(own.states, "tank-stop", "shut")])


@pytest.fixture(scope="module")
def told() -> HeatUpTold:
    """Of the house with its tank cut off, whose relief valve opens at 150 psi."""
    return heat_up(shut(), "heater")


def test_moments_go_on_in_time_and_each_has_all_that_is_shown(told: HeatUpTold) -> None:
    assert all(before <= after for before, after in pairwise(told["minutes"]))
    assert {len(told["temperature"]), len(told["pressure"]), len(told["out"])} == {len(told["minutes"])}
    assert 20 < len(told["minutes"]) < 400
    assert told["units"] == {"temperature": "degF", "pressure": "psi", "volume": "gal"}


def test_course_is_that_of_the_warm_up(told: HeatUpTold) -> None:
    warming = plumbnet.warmup(shut(), "heater")
    (heater,) = warming.fired
    assert told["minutes"][-1] * 60 == pytest.approx(warming.run.times_s[-1], rel=1e-4)
    assert told["temperature"][-1] == pytest.approx((warming.temperatures_k(heater)[-1] - 273.15) * 1.8 + 32, abs=0.01)
    assert max(told["pressure"]) == pytest.approx(max(warming.pressures_pa(heater)) / 6894.757, abs=0.01)
    assert told["out"][-1] == pytest.approx(warming.run.lost_m3 / 0.003785412, abs=0.001)
    assert told["out"][0] == 0.0


def test_what_happens_is_told_in_words_and_there_is_a_moment_for_it(told: HeatUpTold) -> None:
    assert any("heater/relief opens at 150 psi" in words for _, words in told["happens"])
    for minute, _ in told["happens"]:
        assert min(abs(minute - each) for each in told["minutes"]) < 0.01


def test_heater_of_which_nothing_says_how_fast_it_warms_is_refused_in_words() -> None:
    own = board(HOUSE.replace("input: 40000 Btu/h,", ""))
    with pytest.raises(NoWarmUp):
        heat_up(own.states.drawn, "heater")
    assert "lacks an input" in str(refused_or(lambda: own.heat_up("", "heater"))["refused"])


def test_board_heats_up_a_state(told: HeatUpTold) -> None:
    own = board()
    code = code_of([touch(own.states, "tank-stop", "shut")])
    assert own.heat_up(code, "heater") == told
