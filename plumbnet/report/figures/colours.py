"""The colours and line styles of services, verdicts and zones, for a light, a dark and a black-and-white picture.

Measured, not guessed: tests/report/figures/test_colours.py holds the distances for normal and for colour-blind eyes,
and the contrast against the ground. Nothing is told apart by colour alone: services differ in width and dash too,
zones in hatch, and each carries its word.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from plumbnet.drawing import Dash, Hatch, LineStyle, Palette, Service, Shade
from plumbnet.rules.facts import Verdict

Theme = Literal["light", "dark", "bw"]
"""For paper and screen, for a dark screen, for a printer without colours."""
_RETURN: Dash = (5.0, 2.0)
_TRAPPED: Dash = (6.0, 1.8)
_MIXED: Dash = (10.0, 1.6, 1.4, 1.6)
_HATCHES: Mapping[Verdict, Hatch] = {
    Verdict.OPEN: "",
    Verdict.CONTROLLED: "level",
    Verdict.TRAPPED: "rising",
    Verdict.SEALED: "crossed",
    Verdict.ON_DEMAND: "dotted",
}


def _services(cold: str, hot: str, mixed: str) -> dict[Service, LineStyle]:
    return {
        Service.COLD: LineStyle(cold, 1.5),
        Service.HOT: LineStyle(hot, 2.0),
        Service.MIXED: LineStyle(mixed, 1.9, _MIXED),
        Service.RETURN: LineStyle(hot, 1.5, _RETURN),
    }


def _shades(*, dash: Dash = _TRAPPED, **colours: tuple[str, str]) -> dict[str, Shade]:
    """A shade for each verdict; `dash` is that of the outline of trapped zones, in widths of the line."""
    shades = {verdict: Shade(*colours[verdict.name.lower()], hatch) for verdict, hatch in _HATCHES.items()}
    shades[Verdict.TRAPPED] = replace(shades[Verdict.TRAPPED], dash=dash)
    shades[Verdict.SEALED] = replace(shades[Verdict.SEALED], width=2.0)
    return {verdict.value: shade for verdict, shade in shades.items()}


PALETTES: Mapping[Theme, Palette] = {
    "light": Palette(
        ground="#ffffff",
        ink="#1b1b1b",
        faint="#5a5a5a",
        ring="#a3006d",
        band="#9fdcc0",
        band_edge="#00654a",
        services=_services("#004b87", "#d55e00", "#84502f"),
        shades=_shades(
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
        ring="#ff8fd6",
        band="#1f5b48",
        band_edge="#59d3a8",
        services=_services("#56b4e9", "#ff7a33", "#ffd9a0"),
        shades=_shades(
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
        ring="#000000",
        band="#c4c4c4",
        band_edge="#000000",
        services={
            Service.COLD: LineStyle("#000000", 1.1),
            Service.HOT: LineStyle("#000000", 2.0, (11.0, 1.6, 1.3, 1.6, 1.3, 1.6)),
            Service.MIXED: LineStyle("#000000", 1.5, (9.0, 1.6, 1.3, 1.6)),
            Service.RETURN: LineStyle("#000000", 1.3, (3.6, 2.0)),
        },
        # In black a dashed outline would be taken for a return pipe.
        shades=_shades(
            dash=(),
            open=("#ffffff", "#000000"),
            controlled=("#f4f4f4", "#000000"),
            trapped=("#ececec", "#000000"),
            sealed=("#dcdcdc", "#000000"),
            on_demand=("#ffffff", "#000000"),
        ),
    ),
}
"""The palette of each theme."""
