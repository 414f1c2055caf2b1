"""The box of a sheet to the paper it goes on: the smallest ISO size on which it reads well, or one by its name."""

from dataclasses import dataclass
from typing import Final, Literal

from plumbnet.drawing.routing import Box

_POINTS_PER_MM: Final = 72.0 / 25.4
_ISO_216_MM: Final = {
    "a4": (210.0, 297.0),
    "a3": (297.0, 420.0),
    "a2": (420.0, 594.0),
    "a1": (594.0, 841.0),
    "a0": (841.0, 1189.0),
}
"""A4 to A0, ISO 216 (from memory)."""
_ASME_Y14_1_MM: Final = {
    "letter": (215.9, 279.4),
    "11x17": (279.4, 431.8),
    "17x22": (431.8, 558.8),
    "22x34": (558.8, 863.6),
    "34x44": (863.6, 1117.6),
}
"""A to E of ASME Y14.1, by their inches (from memory)."""
SheetName = Literal["a4", "a3", "a2", "a1", "a0", "letter", "11x17", "17x22", "22x34", "34x44"]
"""A sheet of paper, by its name or its inches."""
SMALLEST_SCALE: Final = 0.85
"""At this scale the smallest words are 5 points high."""
LARGEST_SCALE: Final = 1.4
_MARGIN: Final = 12.0
"""Points of white round the drawing, on each side, that printers want."""


@dataclass(frozen=True, slots=True)
class PaperSize:
    """Width and height in points, and how many points one unit of the drawing takes."""

    width: float
    height: float
    scale: float

    @property
    def area(self) -> float:
        """What it takes, in square points."""
        return self.width * self.height

    @classmethod
    def natural(cls, box: Box) -> "PaperSize":
        """As large as the drawing, at scale 1."""
        return cls(box[2] - box[0], box[3] - box[1], 1.0)


def paper_for(box: Box) -> PaperSize:
    """The smallest sheet from A4 to A0, upright or lying, that holds the box at 0.85 of its size or more.

    Larger drawings get paper of their own size.
    """
    for size in _ISO_216_MM.values():
        best = _fitted(box, size)
        if best.scale >= SMALLEST_SCALE:
            return best
    return PaperSize.natural(box)


def paper_named(box: Box, name: SheetName) -> PaperSize:
    """The sheet of that name, upright or lying, at the largest scale at which it holds the box."""
    return _fitted(box, {**_ISO_216_MM, **_ASME_Y14_1_MM}[name])


def _fitted(box: Box, size_mm: tuple[float, float]) -> PaperSize:
    wide, high = box[2] - box[0], box[3] - box[1]
    short, long = (side * _POINTS_PER_MM for side in size_mm)
    fits = [
        PaperSize(width, height, min((width - 2 * _MARGIN) / wide, (height - 2 * _MARGIN) / high, LARGEST_SCALE))
        for width, height in ((long, short), (short, long))
    ]
    return max(fits, key=lambda paper: paper.scale)
