"""Where things are on paper: symbols, joints, and the routes of pipes."""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from plumbnet.drawing.columns import FRAME, MARGIN, surround
from plumbnet.drawing.items import Item, Link
from plumbnet.drawing.lettering import size_of
from plumbnet.drawing.palette import Service
from plumbnet.drawing.symbols import Point

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""


@dataclass(frozen=True, slots=True)
class Placement:
    """An item's symbol: its middle, how it is turned, and the room it takes with its words."""

    item: Item
    x: float
    y: float
    quarters: int = 0
    is_mirrored: bool = False
    is_turned: bool = False
    stretch: float = 1.0
    words_at_side: int = 0
    joined: tuple[tuple[str, float], ...] = ()
    """Ports that pipes join, each with its side: -1 left, 1 right."""

    @property
    def words_box(self) -> Box:
        """Left, top, right and bottom of its words."""
        wide, high = size_of(self.item.lines, self.item.letter_size)
        left, _, right, bottom = self.outer_box
        if self.words_at_side:
            x = right + MARGIN if self.words_at_side > 0 else left - MARGIN - wide
            return x, self.y - high / 2, x + wide, self.y + high / 2
        return self.x - wide / 2, bottom + MARGIN, self.x + wide / 2, bottom + MARGIN + high

    @property
    def outer_box(self) -> Box:
        """The box of the symbol with all its strokes, its ring and its frame."""
        top, bottom = (reach * self.stretch for reach in self.item.symbol.reach)
        if self.is_turned:
            top, bottom = bottom, top
        left = right = self.item.symbol.width / 2
        for _ in range(self.quarters % 4):
            left, top, right, bottom = top, right, bottom, left
        more = surround(self.item)
        return self.x - left - more, self.y - top - more, self.x + right + more, self.y + bottom + more

    @property
    def ring_box(self) -> Box:
        """The same without the frame."""
        inward = FRAME * self.item.is_framed
        left, top, right, bottom = self.outer_box
        return left + inward, top + inward, right - inward, bottom - inward

    def at(self, point: Point) -> Point:
        """Where a point of its symbol comes to lie."""
        x, y = point
        x, y = -x if self.is_mirrored else x, (-y if self.is_turned else y) * self.stretch
        for _ in range(self.quarters % 4):
            x, y = y, -x
        return self.x + x, self.y + y


@dataclass(frozen=True, slots=True)
class Route:
    """A pipe on paper, in the direction its author drew it; without a link, a piece of the run of a joint.

    `before` and `after` are what it shares with other pipes of the joints it leaves and enters, in its direction.
    """

    link: Link | None
    joint: str
    service: Service
    points: tuple[Point, ...]
    before: tuple[Point, ...] = ()
    after: tuple[Point, ...] = ()

    @property
    def whole(self) -> tuple[Point, ...]:
        """Its points with those it shares."""
        return (*self.before, *self.points, *self.after)


@dataclass(frozen=True, slots=True)
class Junction:
    """A joint on paper: its dots, the first of which is its home."""

    item: Item
    dots: tuple[Point, ...]


@dataclass(frozen=True)
class Arrangement:
    """Everything in its place; one unit is one point, y grows downwards."""

    placements: tuple[Placement, ...]
    junctions: tuple[Junction, ...]
    routes: tuple[Route, ...]
    forks: tuple[Point, ...] = ()
    """Where pipes part that leave one port together."""

    @cached_property
    def segments(self) -> tuple[tuple[int, Point, Point], ...]:
        """Every straight piece of every route, with the number of its route."""
        return tuple((n, a, b) for n, route in enumerate(self.routes) for a, b in pairwise(route.points))

    @cached_property
    def between(self) -> dict[frozenset[str], Route]:
        """The pipe between two parts; the first, where there are several."""
        found: dict[frozenset[str], Route] = {}
        for route in self.routes:
            if route.link is not None:
                found.setdefault(frozenset(end.part for end in route.link.ends), route)
        return found
