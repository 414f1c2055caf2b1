"""What a riser diagram has beyond symbols and pipes, on paper: levels, cards round what stands for many, breaks."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.drawing.lettering import LEADING, width
from plumbnet.drawing.routing import Box
from plumbnet.drawing.symbols import Point

LEVEL_SIZE = 6.5
"""Size of the words at a level."""
COUNT_SIZE = 8.0
"""Size of a count."""
SHEAF = 4.0
"""How far the cards behind a card look out."""


@dataclass(frozen=True, slots=True)
class FloorMark:
    """The floor line of a level, and its height in words above its left end."""

    left: float
    right: float
    y: float
    words: str

    @property
    def extent(self) -> Box:
        """All of it."""
        return self.left, self.y - 9.0, self.right, self.y

    def boxes(self) -> Iterator[Box]:
        """What the words cover."""
        yield self.left, self.y - 9.0, self.left + 4.0 + width(self.words, LEVEL_SIZE), self.y - 1.0


@dataclass(frozen=True, slots=True)
class CardMark:
    """A sheaf of cards round what is drawn for many, with its count in the upper right corner, and names beside it."""

    box: Box
    count: str
    names: tuple[str, ...] = ()

    @property
    def extent(self) -> Box:
        """All of it."""
        left, top, right, foot = self.box
        return left, top - SHEAF, right + SHEAF, foot

    def boxes(self) -> Iterator[Box]:
        """What its head covers."""
        left, top, right, _ = self.box
        yield left, top - SHEAF, right + SHEAF, self.first_name[1] + len(self.names) * LEVEL_SIZE * LEADING

    @property
    def first_name(self) -> Point:
        """The left edge of the first line of names: beside the count where there is room, else below it."""
        left, top, right, _ = self.box
        taken = width(self.count, COUNT_SIZE, bold=True) + width(self.names[0] if self.names else "", LEVEL_SIZE)
        return left + 4.0, top + (6.5 if taken + 16.0 <= right - left else 17.0)

    @property
    def at_count(self) -> Point:
        """The right edge of the count."""
        return self.box[2] - 3.0, self.box[1] + 6.5


@dataclass(frozen=True, slots=True)
class CaptionMark:
    """What a shaft is called: lines of words, the last of which stands at y."""

    left: float
    y: float
    lines: tuple[str, ...]

    @property
    def extent(self) -> Box:
        """All of it."""
        wide = max((width(words, LEVEL_SIZE) for words in self.lines), default=0.0)
        return self.left, self.y - len(self.lines) * LEVEL_SIZE * LEADING, self.left + wide, self.y + 4.0

    def boxes(self) -> Iterator[Box]:
        """What the words cover."""
        yield self.extent


@dataclass(frozen=True, slots=True)
class BreakMark:
    """Where levels are left out: the risers that are broken there, and words at the left."""

    left: float
    y: float
    xs: tuple[float, ...]
    lines: tuple[str, str]

    @property
    def extent(self) -> Box:
        """All of it."""
        return self.left, self.y - 8.0, max(self.xs, default=self.left), self.y + 8.0

    def boxes(self) -> Iterator[Box]:
        """What words and breaks cover."""
        wide = max(width(words, LEVEL_SIZE) for words in self.lines)
        yield self.left, self.y - 8.0, self.left + 4.0 + wide, self.y + 8.0
        yield from ((x - 6.0, self.y - 6.0, x + 6.0, self.y + 6.0) for x in self.xs)


RiserMark = FloorMark | CardMark | CaptionMark | BreakMark
