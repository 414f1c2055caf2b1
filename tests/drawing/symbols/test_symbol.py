from itertools import pairwise

import pytest

from plumbnet.drawing.lettering import width
from plumbnet.drawing.symbols.symbol import (
    SYMBOLS,
    Disc,
    Letter,
    Stroke,
    arrow,
    check_marks,
    in_line,
    shifted,
    symbol_named,
)


def test_check_is_a_triangle_that_points_at_a_bar() -> None:
    triangle, bar = check_marks(0.0, 10.0)
    assert max(triangle.points) == (5.0, 0.0)
    assert {x for x, _ in bar.points} == {5.0}
    assert bar.width > triangle.width


def test_arrow_points_to_the_right() -> None:
    shaft, head = arrow(0.0, 0.0, 10.0)
    assert max(head.points) == (5.0, 0.0)
    assert max(shaft.points)[0] < 5.0


def test_reach_holds_every_stroke() -> None:
    symbol = in_line("x", 10.0, 10.0, Disc(0.0, -8.0, 3.0), Stroke(((0.0, 0.0), (0.0, 7.0))))
    assert symbol.reach == (11.0, 7.0)


def test_shifted_mark_keeps_its_shape() -> None:
    assert shifted(Disc(1.0, 2.0, 3.0), 4.0) == Disc(5.0, 2.0, 3.0)
    assert shifted(Stroke(((0.0, 0.0), (1.0, 1.0))), 4.0).points == ((4.0, 0.0), (5.0, 1.0))  # type: ignore[union-attr]  # a stroke


def test_kind_without_a_symbol_is_a_box_that_holds_its_name() -> None:
    switch, long = symbol_named("flow_switch"), symbol_named("thermostatic_balancing_valve")
    assert switch.words == "flow switch"
    assert switch.marks[1:] == (Letter(0.0, 0.0, "flow switch", 7.0),)
    assert switch.width > 1.4 * width("flow switch", bold=True)
    assert [mark.text for mark in long.marks if isinstance(mark, Letter)] == ["thermostatic", "balancing", "valve"]
    assert long.height > 3 * 7.0
    assert switch.is_two_sided
    assert symbol_named("meter") is SYMBOLS["meter"]


def test_words_say_what_a_symbol_stands_for() -> None:
    assert SYMBOLS["checked_meter"].words == "meter with a check"
    assert SYMBOLS["open_tank"].words == "open tank"


@pytest.mark.parametrize("name", sorted(SYMBOLS))
def test_sockets_lie_on_the_edge_and_apart(name: str) -> None:
    symbol = SYMBOLS[name]
    for x, y in symbol.sockets.values():
        assert abs(x) == pytest.approx(symbol.width / 2) or symbol.hangs
        assert abs(y) <= symbol.height / 2
    if symbol.is_two_sided:
        heights = sorted(y for _, y in symbol.sockets.values())
        assert all(b - a >= 7.0 for a, b in pairwise(heights))


@pytest.mark.parametrize("name", sorted(SYMBOLS))
def test_strokes_stay_near_the_body(name: str) -> None:
    symbol = SYMBOLS[name]
    xs = [x for mark in symbol.marks if isinstance(mark, Stroke) for x, _ in mark.points]
    assert not xs or max(map(abs, xs)) <= symbol.width / 2 + 6.0
    assert max(symbol.reach) <= symbol.height / 2 + 14.0
