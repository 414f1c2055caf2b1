"""A heater to its tank chart: the size needed against the highest pressure, a line for each charge, sizes to be had."""

from collections.abc import Iterator

import numpy as np
from matplotlib.axes import Axes

from plumbnet.analysis import Report
from plumbnet.layout.units import PRESSURE, VOLUME, Units, parse_measure, show
from plumbnet.report.charts.chart_paper import POINTS, axes_of, extent_in, heading, inked, style
from plumbnet.report.charts.chart_scale import scaled, unit
from plumbnet.report.charts.end_labels import label_ends
from plumbnet.report.charts.pens import PENS, Pens
from plumbnet.report.figures import Theme
from plumbnet.rules import place
from plumbnet.study.dossier import Sizes

WIDTH_IN, HEIGHT_IN = 7.2, 4.2
"""Size of a sheet, in inches."""
_MARGINS_IN = (0.75, 0.55, 1.75, 0.55)  # left, bottom, right, top
_POINTS = 121  # of a line
_REACH = 2.2  # the axis of pressure ends so many times as far from the start as the tank's own highest pressure
_HIGH = 2.4  # the axis of volume ends at so many times the size needed
_ABOVE = 1.4  # and at no less than so many times the size to fit
_STRIP = 0.09  # of the width: where sizes are named, left of the start
_APART_IN = 0.17  # sizes to be had that lie nearer are left out
_STEP: dict[Units, str] = {"us": "10 psi", "metric": "50 kPa", "metric-bar": "0.5 bar"}
_DASHES = {0: "-", -1: "--", -2: (0.0, (4.0, 1.5, 1.0, 1.5)), 1: (0.0, (1.0, 1.5))}
"""Lines by how many steps their charge lies above the tank's own."""


def tank_chart(report: Report, heater: str, found: Sizes, *, theme: Theme = "light") -> Axes:
    """The smallest tank for a heater against the highest pressure allowed at it, for several charges.

    The one chosen is marked, and the sizes that can be had are the scale. `found` is that of
    `study.tank_size.sizes`.
    """
    pens, units = PENS[theme], report.facts.units
    with style():
        axes = axes_of((WIDTH_IN, HEIGHT_IN), _MARGINS_IN, pens)
        heading(axes, report, f"the tank of {heater}, {place(found.at)}")
        axes.set_xlabel(f"highest pressure at the tank, {unit(PRESSURE, units)}")
        axes.set_ylabel(f"smallest tank, {unit(VOLUME, units)}; across, the sizes to be had")
        inked(axes, pens)
        _lines(axes, found, units, pens)
        _series(axes, found, units, pens)
        _chosen(axes, found, units, pens)
    return axes


def _lines(axes: Axes, found: Sizes, units: Units, pens: Pens) -> None:
    """A line for each charge, and the words at its end."""
    end_pa = found.start_pa + _REACH * (found.end_pa - found.start_pa)
    across_pa = np.linspace(found.start_pa, end_pa, _POINTS)[1:]
    left_pa = found.start_pa - _STRIP * (end_pa - found.start_pa)
    axes.set_xlim(scaled(left_pa, PRESSURE, units), scaled(end_pa, PRESSURE, units))
    top_m3 = max(_HIGH * found.least_m3, _ABOVE * (found.nominal_m3 or 0.0))
    axes.set_ylim(0.0, scaled(top_m3, VOLUME, units))
    ends = []
    for steps, charge_pa in _charges(found, units):
        needed = [found.size_m3(charge_pa=charge_pa, end_pa=float(each)) for each in across_pa]
        up = [scaled(each, VOLUME, units) if each <= 2.0 * top_m3 else np.nan for each in needed]
        across = [scaled(float(each), PRESSURE, units) for each in across_pa]
        axes.plot(
            across,
            up,
            color=pens.water if steps else pens.ink,
            linestyle=_DASHES[steps],
            linewidth=1.4 if steps else 2.0,
            zorder=3.0,
        )
        if np.isfinite(up[-1]):
            ends.append((up[-1], f"charged to {show(charge_pa, PRESSURE, units)}"))
    label_ends(axes, ends, pens, room_in=_MARGINS_IN[2] - 0.1)


def _charges(found: Sizes, units: Units) -> Iterator[tuple[int, float]]:
    """Charges, with the steps by which they differ from the tank's own; none below the air's."""
    step_pa = parse_measure(_STEP[units], PRESSURE, units)
    for steps in (0, -1, -2, 1):
        charge_pa = found.charge_pa + steps * step_pa
        if charge_pa >= 0.0 or steps == 0:
            yield steps, charge_pa


def _series(axes: Axes, found: Sizes, units: Units, pens: Pens) -> None:
    """The sizes to be had: each a line across, named at its left end."""
    top, apart = axes.get_ylim()[1], _APART_IN / extent_in(axes)[1]
    shown: list[float] = []
    for size_m3 in sorted(found.series_m3, key=lambda each: each != found.nominal_m3):
        up = scaled(size_m3, VOLUME, units)
        if up <= top * (1.0 - apart / 2.0) and all(abs(up - other) >= apart * top for other in shown):
            shown.append(up)
            axes.axhline(up, color=pens.faint, linewidth=0.5, zorder=1.0)
            _named(axes, up, show(size_m3, VOLUME, units), pens)


def _named(axes: Axes, up: float, words: str, pens: Pens) -> None:
    """A size on its line, near the left edge, where no line of a charge comes."""
    paper = {"facecolor": pens.paper, "edgecolor": "none", "pad": 0.5}
    place = axes.get_yaxis_transform()
    axes.text(0.01, up, words, va="center", color=pens.ink, fontsize=POINTS - 1.0, transform=place, bbox=paper)


def _chosen(axes: Axes, found: Sizes, units: Units, pens: Pens) -> None:
    """The point of the tank that is needed, and above it the size to fit."""
    at, least = scaled(found.end_pa, PRESSURE, units), scaled(found.least_m3, VOLUME, units)
    axes.axvline(at, color=pens.danger, linewidth=1.0, linestyle=(0.0, (1.0, 2.0)), zorder=2.0)
    axes.plot([at], [least], "o", color=pens.ink, markersize=6.0, zorder=5.0)
    words = f"at least {show(found.least_m3, VOLUME, units)}\nup to {show(found.end_pa, PRESSURE, units)}"
    if found.nominal_m3 is not None:
        nominal = scaled(found.nominal_m3, VOLUME, units)
        axes.plot([at], [nominal], "D", color=pens.ink, markerfacecolor=pens.paper, markersize=6.0, zorder=5.0)
        words = f"fit {show(found.nominal_m3, VOLUME, units)},\n{words}"
    axes.annotate(
        words,
        (at, max(least, scaled(found.nominal_m3 or 0.0, VOLUME, units))),
        xytext=(8.0, 6.0),
        textcoords="offset points",
        color=pens.ink,
        zorder=6.0,
        bbox={"facecolor": pens.paper, "edgecolor": "none", "pad": 1.0},
    )
