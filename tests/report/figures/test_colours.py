from itertools import combinations

import numpy as np
import pytest
from numpy.typing import NDArray

from plumbnet.drawing.palette import Service
from plumbnet.report.figures.colours import PALETTES, Theme
from plumbnet.rules.facts.verdict_words import Verdict

Colour = NDArray[np.float64]
# Simulated dichromacy, Machado, Oliveira, Fernandes (2009), severity 1.0; the numbers are from memory.
EYES = {
    "normal": np.eye(3),
    "protan": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deutan": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "tritan": np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
COLOURED: list[Theme] = ["light", "dark"]
THEMES: list[Theme] = ["light", "dark", "bw"]


def linear(colour: str) -> Colour:
    """sRGB to linear light (IEC 61966-2-1)."""
    channels = np.array([int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)])
    return np.where(channels <= 0.04045, channels / 12.92, ((channels + 0.055) / 1.055) ** 2.4)


def lab(light: Colour) -> Colour:
    """Linear light to CIE Lab under D65."""
    to_xyz = np.array(
        [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.072175], [0.0193339, 0.119192, 0.9503041]]
    )
    ratios = to_xyz @ np.clip(light, 0, 1) / np.array([0.95047, 1.0, 1.08883])
    f = np.where(ratios > 216 / 24389, np.cbrt(ratios), (24389 / 27 * ratios + 16) / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def distance(one: str, other: str, eye: Colour) -> float:
    """CIE 1976 colour difference as an eye sees it."""
    return float(np.linalg.norm(lab(eye @ linear(one)) - lab(eye @ linear(other))))


def contrast(one: str, other: str) -> float:
    """Contrast ratio (WCAG 2.1)."""
    weights = np.array([0.2126, 0.7152, 0.0722])
    low, high = sorted(float(weights @ linear(colour)) for colour in (one, other))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("theme", COLOURED)
@pytest.mark.parametrize("eye", EYES)
def test_every_eye_tells_cold_hot_and_mixed_apart(theme: Theme, eye: str) -> None:
    services = PALETTES[theme].services
    for one, other in combinations((Service.COLD, Service.HOT, Service.MIXED), 2):
        assert distance(services[one].colour, services[other].colour, EYES[eye]) > 25, (one, other)


@pytest.mark.parametrize("theme", THEMES)
def test_services_differ_in_width_or_dash_as_well(theme: Theme) -> None:
    services = PALETTES[theme].services
    looks = {(line.width, line.dash) for line in services.values()}
    assert len(looks) == len(services)


@pytest.mark.parametrize("theme", THEMES)
def test_lines_and_words_stand_out_from_the_ground(theme: Theme) -> None:
    palette = PALETTES[theme]
    for line in palette.services.values():
        assert contrast(line.colour, palette.ground) >= 3
    for words in (palette.ink, palette.faint, palette.ring):
        assert contrast(words, palette.ground) >= 4.5
    for shade in palette.shades.values():
        assert contrast(shade.edge, palette.ground) >= 4.5
        assert contrast(shade.edge, shade.fill) >= 4.5


@pytest.mark.parametrize("theme", THEMES)
def test_pipes_stand_out_from_a_shaded_zone(theme: Theme) -> None:
    palette = PALETTES[theme]
    for verdict in (Verdict.TRAPPED, Verdict.SEALED):
        for line in palette.services.values():
            assert contrast(line.colour, palette.shades[verdict].fill) >= 3


@pytest.mark.parametrize("theme", THEMES)
def test_every_verdict_has_a_shade_and_its_own_hatch(theme: Theme) -> None:
    verdicts = PALETTES[theme].shades
    assert set(verdicts) == set(Verdict)
    assert len({shade.hatch for shade in verdicts.values()}) == len(Verdict)


@pytest.mark.parametrize("theme", COLOURED)
@pytest.mark.parametrize("eye", EYES)
def test_trapped_and_sealed_are_told_apart_by_every_eye(theme: Theme, eye: str) -> None:
    verdicts = PALETTES[theme].shades
    assert distance(verdicts[Verdict.TRAPPED].edge, verdicts[Verdict.SEALED].edge, EYES[eye]) > 12
