"""A symbol as data: strokes round its middle, and where pipes join it; and the register of symbols.

One drawing unit is one point; x grows to the right, y downwards. The symbols are generic trade practice and
claim conformity with no standard.
"""

import textwrap
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from plumbnet.drawing import lettering

Point = tuple[float, float]
Fill = Literal["none", "ground", "ink"]
"""What is inside a closed stroke: what lies behind it, the colour of the ground, the colour of the lines."""

THIN = 1.0
"""Width of a symbol's lines, in points."""
HEAVY = 1.8
"""Width of the lines that carry the meaning, such as the bar of a check."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through `points`: straight from one to the next, or cubic curves, each of two handles and an end."""

    points: tuple[Point, ...]
    is_closed: bool = False
    is_curved: bool = False
    fill: Fill = "none"
    width: float = THIN


@dataclass(frozen=True, slots=True)
class Disc:
    """A circle."""

    x: float
    y: float
    radius: float
    fill: Fill = "ground"
    width: float = THIN


@dataclass(frozen=True, slots=True)
class Letter:
    """A word in a symbol, in the middle of its place and never mirrored."""

    x: float
    y: float
    text: str
    size: float = 8.0


Mark = Stroke | Disc | Letter


@dataclass(frozen=True, slots=True)
class Symbol:
    """How a part is drawn.

    `sockets` gives each port its place on the left or right edge; ports without one are spread over both.
    `is_two_sided`: a pipe may join a port on either side, at the same height. Otherwise the symbol is mirrored
    as a whole. `turns`: it may stand on its head, its sockets alone or the whole drawing. `tops` are ports on the
    crown, from which an accessory rises. `hangs`: an accessory that rises from its pipe ("up") or may also hang
    below it ("both"); its pipe then joins it at the foot. `is_joint`: only a dot where pipes meet.
    """

    name: str
    width: float
    height: float
    marks: tuple[Mark, ...]
    sockets: Mapping[str, Point] = field(default_factory=dict)
    is_two_sided: bool = False
    turns: Literal["", "sockets", "whole"] = ""
    tops: tuple[str, ...] = ()
    one_side: Mapping[str, float] = field(default_factory=dict)
    """Heights of the ports where all pipes come from one side, if it can be piped so."""
    hangs: Literal["", "up", "both"] = ""
    stem: float = 10.0
    """Length of the pipe on which it stands."""
    is_joint: bool = False
    leads: Mapping[str, Point] = field(default_factory=dict)
    """Points inside to which a line leads from a port, whichever side it is on."""
    said: str = ""
    """What it stands for, where its name does not say it."""

    @property
    def words(self) -> str:
        """What it stands for.

        >>> SYMBOLS["checked_meter"].words
        'meter with a check'
        """
        bare = self.name.removeprefix("checked_")
        return self.said or bare.replace("_", " ") + (" with a check" if bare != self.name else "")

    @property
    def reach(self) -> tuple[float, float]:
        """How far it goes up and down from its middle, with all its strokes."""
        heights = [y for mark in self.marks for y in _heights(mark)]
        return -min(heights), max(heights)

    @property
    def is_in_line(self) -> bool:
        """Whether it has one port at the middle of each side, so that it can also stand upright in a pipe."""
        heights = [y for _, y in self.sockets.values()]
        return heights == [0.0, 0.0] and not self.is_two_sided


def _heights(mark: Mark) -> Iterator[float]:
    match mark:
        case Stroke(points):
            yield from (y for _, y in points)
        case Disc(y=y, radius=radius):
            yield from (y - radius, y + radius)
        case Letter(y=y, size=size):
            yield from (y - size / 2, y + size / 2)


SYMBOLS: dict[str, Symbol] = {}


def symbol(name: str) -> Callable[[Callable[[str], Symbol]], Callable[[str], Symbol]]:
    """Register what a function draws under a name; kinds of part ask for it by that name."""

    def register(make: Callable[[str], Symbol]) -> Callable[[str], Symbol]:
        SYMBOLS[name] = make(name)
        return make

    return register


def symbol_named(name: str) -> Symbol:
    """The symbol of that name, or a box with the name in it where none was drawn, its ports spread over both sides."""
    return SYMBOLS.get(name) or _named_box(name)


def _named_box(name: str) -> Symbol:
    """A box round the words of a name; half as wide again as they are, since a legend shrinks letters less."""
    lines = tuple(textwrap.wrap(name.replace("_", " "), 12))
    across, high = (1.5 * each for each in lettering.size_of(lines, bold=True))
    width, height = max(34.0, across), max(30.0, high)
    step = lettering.LABEL_SIZE * lettering.LEADING
    top = -step * (len(lines) - 1) / 2
    words = (Letter(0.0, top + step * row, line, lettering.LABEL_SIZE) for row, line in enumerate(lines))
    return Symbol(name, width, height, (box(width, height), *words), is_two_sided=True)


def in_line(name: str, width: float, height: float, *marks: Mark) -> Symbol:
    """A symbol entered at the middle of its left edge and left at the middle of its right edge."""
    sockets = {"in": (-width / 2, 0.0), "out": (width / 2, 0.0)}
    return Symbol(name, width, height, marks, sockets)


def straight(*points: Point, width: float = THIN) -> Stroke:
    """A straight stroke."""
    return Stroke(points, width=width)


def shape(*points: Point, fill: Fill = "ground", width: float = THIN) -> Stroke:
    """A closed stroke of straight lines."""
    return Stroke(points, is_closed=True, fill=fill, width=width)


def curve(*points: Point, fill: Fill = "none", width: float = THIN) -> Stroke:
    """A stroke of cubic curves: a start, then two handles and an end for each."""
    return Stroke(points, is_curved=True, fill=fill, width=width)


def box(width: float, height: float) -> Stroke:
    """A rectangle round the middle."""
    x, y = width / 2, height / 2
    return shape((-x, -y), (x, -y), (x, y), (-x, y))


def bow_tie(width: float, height: float, *, fill: Fill = "ground") -> Stroke:
    """The body of a valve: two triangles that meet at the middle."""
    x, y = width / 2, height / 2
    return shape((-x, -y), (x, y), (x, -y), (-x, y), fill=fill)


def shifted(mark: Mark, x: float) -> Mark:
    """A mark moved to the right by `x`."""
    match mark:
        case Stroke(points):
            return replace(mark, points=tuple((px + x, py) for px, py in points))
        case _:
            return replace(mark, x=mark.x + x)


def check_marks(x: float, size: float) -> tuple[Stroke, Stroke]:
    """A triangle that points at a bar, in the direction water passes; its middle at `x`."""
    half = size / 2
    triangle = shape((x - half, -half), (x - half, half), (x + half, 0.0))
    return triangle, straight((x + half, -half - 1.0), (x + half, half + 1.0), width=HEAVY)


def arrow(x: float, y: float, length: float) -> tuple[Stroke, Stroke]:
    """A small arrow to the right, its middle at (x, y)."""
    tip, half = x + length / 2, length / 2
    return straight((x - half, y), (tip - 3.0, y), width=0.9), shape(
        (tip, y), (tip - 4.5, y - 2.1), (tip - 4.5, y + 2.1), fill="ink", width=0.3
    )


def vessel(width: float, height: float, *, bulge: float = 7.0) -> Stroke:
    """An upright tank with domed ends."""
    x, y = width / 2, height / 2
    k = bulge * 4 / 3
    top, foot = -y + bulge, y - bulge
    return curve(
        (-x, top),
        (-x, top - k),
        (x, top - k),
        (x, top),
        (x, top),
        (x, foot),
        (x, foot),
        (x, foot + k),
        (-x, foot + k),
        (-x, foot),
        (-x, foot),
        (-x, top),
        (-x, top),
        fill="ground",
    )
