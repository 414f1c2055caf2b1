"""Marks of symbols as elements of SVG."""

import re

import pytest
from matplotlib.path import Path

from plumbnet.drawing.screen.svg_strokes import drawn_marks, outline_data, path_data
from plumbnet.drawing.symbols.symbol import SYMBOLS, Disc, Letter, Mark, Point, Stroke


def moved(point: Point) -> Point:
    return point[0] + 10.0, point[1] + 20.0


def test_strokes_and_discs_carry_classes_and_no_colours() -> None:
    marks: list[Mark] = [
        Stroke(((0, 0), (4, 0)), width=1.8),
        Stroke(((0, 0), (1, 1), (2, 0)), is_closed=True, fill="ink"),
        Disc(1, 2, 3),
    ]
    assert list(drawn_marks(marks, moved)) == [
        '<path class="none heavy" d="M10 20L14 20"/>',
        '<path class="ink" d="M10 20L11 21L12 20Z"/>',
        '<circle class="ground" cx="11.0" cy="22.0" r="3"/>',
    ]


def test_curve_has_its_handles() -> None:
    assert path_data([(0, 0), (1, 0), (2, 1), (2, 2)], is_curved=True) == "M0 0C1 0 2 1 2 2"


def test_letters_are_outlines_round_their_place_and_no_text() -> None:
    (drawn,) = drawn_marks([Letter(0.0, 0.0, "M", 9.0)], moved)
    assert drawn.startswith('<path class="letter" d="M')
    numbers = [float(number) for number in re.findall(r"-?\d+\.\d", drawn)]
    xs, ys = numbers[::2], numbers[1::2]
    assert (min(xs) + max(xs)) / 2 == pytest.approx(10.0, abs=0.3)
    assert (min(ys) + max(ys)) / 2 == pytest.approx(20.0, abs=0.3)


def test_path_of_a_pipe_with_a_hop_keeps_its_curve() -> None:
    path = Path([(0, 0), (0, 5), (3, 5), (3, 8), (0, 8)], [Path.MOVETO, Path.LINETO, *[Path.CURVE4] * 3])
    assert outline_data(path) == "M0.0 0.0L0.0 5.0C3.0 5.0 3.0 8.0 0.0 8.0"


@pytest.mark.parametrize("name", sorted(SYMBOLS))
def test_every_symbol_can_be_drawn(name: str) -> None:
    drawn = list(drawn_marks(SYMBOLS[name].marks, moved))
    assert len(drawn) == len(SYMBOLS[name].marks)
    assert all(re.fullmatch(r"<(path|circle) class=\"[a-z ]+\" [^<>]+/>", one) for one in drawn)
