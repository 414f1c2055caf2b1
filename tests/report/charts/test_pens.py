"""Pens are those of the palette, and what charts tell apart by colour differs in grey as well."""

from matplotlib.colors import to_rgb

from plumbnet.report.charts.pens import PENS
from plumbnet.report.figures.colours import PALETTES


def test_every_theme_has_its_pens() -> None:
    assert PENS.keys() == PALETTES.keys()


def test_water_and_what_it_rises_by_differ_in_grey() -> None:
    for pens in PENS.values():
        assert abs(_grey(pens.water) - _grey(pens.rise)) > 0.25


def _grey(colour: str) -> float:
    red, green, blue = to_rgb(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
