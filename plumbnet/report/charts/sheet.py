"""A report and the name of a chart to the bytes of a file with that chart alone."""

from typing import Literal, TypeAlias

from matplotlib.axes import Axes

from plumbnet.analysis.report import Report
from plumbnet.report.charts.ink import figure_of
from plumbnet.report.charts.ladder import ladder_chart
from plumbnet.report.charts.tank import tank_chart
from plumbnet.report.charts.warmup import warmup_chart
from plumbnet.report.palette import Theme
from plumbnet.report.picture import Form, saved

Sort: TypeAlias = Literal["ladder", "warmup", "tank"]
"""What a chart shows."""


def chart_file(report: Report, of: Sort, heater: str, form: Form, *, theme: Theme = "light") -> bytes:
    """A chart as a file; of ladders that of one heater, or of all where the name is empty.

    Raises NoChart (report.charts.sizes) and NoWarmUp (analysis.warming) with a sentence where there is none to draw.
    """
    axes = _axes(report, of, heater, theme)
    name = report.system.title or report.system.record.file
    return saved(figure_of(axes), form, title=f"{name}: {of} chart{f' of {heater}' if heater else ''}")


def _axes(report: Report, of: Sort, heater: str, theme: Theme) -> Axes:
    match of:
        case "ladder":
            return ladder_chart(report, heaters=[heater] if heater else None, theme=theme)
        case "warmup":
            return warmup_chart(report, heater, theme=theme)
        case "tank":
            return tank_chart(report, heater, theme=theme)
