"""The box of a sheet to the paper it goes on: the smallest ISO size on which it reads well."""

from dataclasses import dataclass
from typing import Final

from plumbnet.drawing.routing import Box

_POINTS_PER_MM: Final = 72.0 / 25.4
_ISO_216_MM: Final = ((210.0, 297.0), (297.0, 420.0), (420.0, 594.0), (594.0, 841.0), (841.0, 1189.0))
"""A4 to A0, ISO 216 (from memory)."""
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

    @classmethod
    def natural(cls, box: Box) -> "PaperSize":
        """As large as the drawing, at scale 1."""
        return cls(box[2] - box[0], box[3] - box[1], 1.0)


def paper_for(box: Box) -> PaperSize:
    """The smallest sheet from A4 to A0, upright or lying, that holds the box at 0.85 of its size or more.

    Larger drawings get paper of their own size.
    """
    wide, high = box[2] - box[0], box[3] - box[1]
    for short, long in _ISO_216_MM:
        fits = [
            PaperSize(width, height, min((width - 2 * _MARGIN) / wide, (height - 2 * _MARGIN) / high, LARGEST_SCALE))
            for width, height in (
                (long * _POINTS_PER_MM, short * _POINTS_PER_MM),
                (short * _POINTS_PER_MM, long * _POINTS_PER_MM),
            )
        ]
        best = max(fits, key=lambda paper: paper.scale)
        if best.scale >= SMALLEST_SCALE:
            return best
    return PaperSize.natural(box)
