"""The colours and line styles of services, verdicts and zones, for a light, a dark and a black-and-white picture.

Measured, not guessed: tests/report/test_palette.py holds the distances for normal and for colour-blind eyes, and
the contrast against the ground. Nothing is told apart by colour alone: services differ in width and dash too,
zones in hatch, and each carries its word.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from plumbnet.rules.facts import Verdict

Theme = Literal["light", "dark", "bw"]
"""For paper and screen, for a dark screen, for a printer without colours."""
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
class Line:
    """How a line is drawn; `width` in points."""

    colour: str
    width: float
    dash: Dash = ()


@dataclass(frozen=True, slots=True)
class Shade:
    """How an area is drawn: its fill, its edge (also the colour of its word), its hatch."""

    fill: str
    edge: str
    hatch: Hatch


@dataclass(frozen=True, slots=True)
class Palette:
    """All colours of a picture, as #rrggbb.

    `ink` is for outlines and words, `faint` for what stands back, `stop` rings what stops the water, `way` marks
    the way out.
    """

    ground: str
    ink: str
    faint: str
    stop: str
    way: str
    services: Mapping[Service, Line]
    verdicts: Mapping[Verdict, Shade]


_RETURN: Dash = (5.0, 2.0)
_MIXED: Dash = (10.0, 1.6, 1.4, 1.6)
_HATCHES: Mapping[Verdict, Hatch] = {
    Verdict.OPEN: "",
    Verdict.CONTROLLED: "level",
    Verdict.TRAPPED: "rising",
    Verdict.SEALED: "crossed",
    Verdict.ON_DEMAND: "dotted",
}


def _services(cold: str, hot: str, mixed: str) -> dict[Service, Line]:
    return {
        Service.COLD: Line(cold, 1.5),
        Service.HOT: Line(hot, 2.0),
        Service.MIXED: Line(mixed, 1.9, _MIXED),
        Service.RETURN: Line(hot, 1.5, _RETURN),
    }


def _verdicts(**shades: tuple[str, str]) -> dict[Verdict, Shade]:
    return {verdict: Shade(*shades[verdict.name.lower()], hatch) for verdict, hatch in _HATCHES.items()}


PALETTES: Mapping[Theme, Palette] = {
    "light": Palette(
        ground="#ffffff",
        ink="#1b1b1b",
        faint="#5a5a5a",
        stop="#a3006d",
        way="#9fdcc0",
        services=_services("#004b87", "#d55e00", "#84502f"),
        verdicts=_verdicts(
            open=("#dff2ea", "#00654a"),
            controlled=("#e0ecf7", "#1f5fa8"),
            trapped=("#fff1c9", "#7a5600"),
            sealed=("#fde6de", "#8c0028"),
            on_demand=("#ececec", "#4d4d4d"),
        ),
    ),
    "dark": Palette(
        ground="#14181d",
        ink="#e8e8e8",
        faint="#a8b0b8",
        stop="#ff8fd6",
        way="#1f5b48",
        services=_services("#56b4e9", "#ff7a33", "#ffd9a0"),
        verdicts=_verdicts(
            open=("#12302a", "#59d3a8"),
            controlled=("#17293c", "#8fc1ff"),
            trapped=("#3a3114", "#f0e442"),
            sealed=("#45201a", "#ff9d85"),
            on_demand=("#2a2e33", "#c6cbd0"),
        ),
    ),
    "bw": Palette(
        ground="#ffffff",
        ink="#000000",
        faint="#3c3c3c",
        stop="#000000",
        way="#c4c4c4",
        services={
            Service.COLD: Line("#000000", 1.1),
            Service.HOT: Line("#000000", 2.0, (11.0, 1.6, 1.3, 1.6, 1.3, 1.6)),
            Service.MIXED: Line("#000000", 1.5, (9.0, 1.6, 1.3, 1.6)),
            Service.RETURN: Line("#000000", 1.3, (3.6, 2.0)),
        },
        verdicts=_verdicts(
            open=("#ffffff", "#000000"),
            controlled=("#f4f4f4", "#000000"),
            trapped=("#ececec", "#000000"),
            sealed=("#dcdcdc", "#000000"),
            on_demand=("#ffffff", "#000000"),
        ),
    ),
}
"""The palette of each theme."""
