"""The colours of a theme as charts use them; shapes, dashes and words tell things apart without them."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.drawing import Palette, Service
from plumbnet.report.figures import PALETTES, Theme
from plumbnet.rules.facts import Verdict


@dataclass(frozen=True, slots=True)
class Pens:
    """A colour for each thing that charts draw."""

    paper: str
    ink: str
    """Text, axes, and what is said once."""
    faint: str
    """Lines that lead to labels, and scales."""
    water: str
    """Pressure and water as they stand, and what a remedy makes of them."""
    rise: str
    """The ground of what is added when water is heated."""
    danger: str
    """The limit, and what lies beyond."""


def _pens(palette: Palette) -> Pens:
    return Pens(
        paper=palette.ground,
        ink=palette.ink,
        faint=palette.faint,
        water=palette.services[Service.COLD].colour,
        rise=palette.shades[Verdict.CONTROLLED].fill,
        danger=palette.ring,
    )


PENS: Mapping[Theme, Pens] = {theme: _pens(palette) for theme, palette in PALETTES.items()}
"""Pens by theme."""
