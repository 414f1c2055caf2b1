"""A report to its ladder chart: a column of pressure for each heater, what opens on the way up, and the verdict."""

from collections.abc import Mapping, Sequence

from matplotlib.axes import Axes

from plumbnet.analysis import Report
from plumbnet.layout.units import PRESSURE
from plumbnet.physics.vessels import BREAKS_PA
from plumbnet.report.charts.chart_column import Column
from plumbnet.report.charts.chart_paper import axes_of, heading, inked, style
from plumbnet.report.charts.chart_scale import scaled, unit
from plumbnet.report.charts.ladder_levels import levels, proof
from plumbnet.report.charts.pens import PENS, Pens
from plumbnet.report.figures import Theme
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.margins import StreetBand

MOST_COLUMNS = 12
"""Heaters on one sheet; more are left to further sheets."""
COLUMN_IN, HEIGHT_IN = 2.3, 5.2
"""Width of a column with its labels, and height of a sheet, in inches."""
_LEAST_IN = 3.6  # of all columns together, so that one alone has room for the heading
_MARGINS_IN = (0.75, 0.9, 0.1, 0.5)  # left, bottom, right, top
_ABOVE = 1.12  # the axis ends so many times higher than the highest mark


def ladder_chart(
    report: Report, *, heaters: Sequence[str] | None = None, theme: Theme = "light", bands: Sequence[StreetBand] = ()
) -> Axes:
    """The ladder of each heater, or of those named, in the order of the file; at most `MOST_COLUMNS` of them.

    Pressures are those at each heater, in the units of the report. `bands` tell between what the street of a heater may
    stand; a line beside its column shows it.
    """
    chosen = [one for one in report.heaters if heaters is None or one.name in heaters][:MOST_COLUMNS]
    pens, columns = PENS[theme], max(1, len(chosen))
    with style():
        width_in = _MARGINS_IN[0] + _MARGINS_IN[2] + max(_LEAST_IN, COLUMN_IN * columns)
        axes = axes_of((width_in, HEIGHT_IN), _MARGINS_IN, pens)
        _draw(report, axes, chosen, pens, {band.heater: band for band in bands})
        axes.set_xticks([])
        axes.spines["bottom"].set_visible(False)
        heading(axes, report, _words(len(chosen), len(report.heaters)))
        inked(axes, pens)
    return axes


def _draw(
    report: Report, axes: Axes, heaters: Sequence[HeaterFacts], pens: Pens, bands: Mapping[str, StreetBand]
) -> None:
    units = report.facts.units

    def up(pressure_pa: float) -> float:
        return scaled(pressure_pa, PRESSURE, units)

    each = [levels(report.facts, heater, bands.get(heater.name)) for heater in heaters]
    for found in each[:1]:
        found.append(proof(report.facts))
    marks = [up(level.pressure_pa) for found in each for level in found]
    low, high = min([0.0, *marks]), max([up(BREAKS_PA), *marks])
    axes.set_xlim(0.0, max(1, len(heaters)))
    axes.set_ylim(low, low + (high - low) * _ABOVE)
    axes.set_ylabel(f"pressure at the heater, {unit(PRESSURE, units)}")
    axes.axhline(up(BREAKS_PA), color=pens.danger, linewidth=1.0, linestyle=(0.0, (1.0, 2.0)), zorder=0.5)
    for number, (heater, found) in enumerate(zip(heaters, each, strict=True)):
        Column(axes, pens, heater, found, number, up, bands.get(heater.name)).draw()


def _words(shown: int, there: int) -> str:
    if not there:
        return "nothing here heats water"
    left = f" ({shown} of {there} heaters)" if shown < there else ""
    return f"what opens as the pressure climbs{left}"
