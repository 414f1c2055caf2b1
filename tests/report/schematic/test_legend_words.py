from plumbnet.drawing.palette import Service
from plumbnet.report.figures.colours import PALETTES
from plumbnet.report.schematic.legend_words import LEGEND


def test_every_service_is_explained_and_every_tone_has_a_shade() -> None:
    assert list(LEGEND.services) == list(Service)
    assert list(LEGEND.tones) == ["trapped", "sealed"]
    assert all(set(LEGEND.tones) <= set(palette.shades) for palette in PALETTES.values())
