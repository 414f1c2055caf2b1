"""The services of pipes, and the colours and line styles in which a drawing shows them and shades its areas."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

Dash = tuple[float, ...]
"""Lengths of line and gap in turn, in points; empty for a line without gaps."""
Hatch = Literal["", "rising", "falling", "crossed", "level", "dotted"]
"""How an area is hatched."""


class Service(StrEnum):
    """What water a pipe carries."""

    COLD = "cold"
    HOT = "hot"
    MIXED = "mixed"
    RETURN = "return"


@dataclass(frozen=True, slots=True)
class LineStyle:
    """How a line is drawn; `width` in points."""

    colour: str
    width: float
    dash: Dash = ()


@dataclass(frozen=True, slots=True)
class Shade:
    """How an area is drawn: its fill, its edge (also the colour of its word), its hatch.

    `width` is that of its outline in points, `dash` in widths of that line.
    """

    fill: str
    edge: str
    hatch: Hatch
    width: float = 1.0
    dash: Dash = ()


@dataclass(frozen=True, slots=True)
class Palette:
    """All colours of a picture, as #rrggbb.

    `ink` is for outlines and words, `faint` for what stands back, `ring` goes round what is ringed, `band` along a
    way, with arrowheads in `band_edge`. `shades` has a shade for each tone that an area or a word may have.
    """

    ground: str
    ink: str
    faint: str
    ring: str
    band: str
    band_edge: str
    services: Mapping[Service, LineStyle]
    shades: Mapping[str, Shade]
