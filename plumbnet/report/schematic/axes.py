"""What other programs call: the schematic of a system in axes of matplotlib."""

from matplotlib.axes import Axes

from plumbnet.analysis.report import Report
from plumbnet.report.palette import Theme
from plumbnet.report.schematic.figure import draw_on, schematic


def draw(report: Report, ax: Axes | None = None, *, theme: Theme = "light", date: str | None = None) -> Axes:
    """Draw the schematic of a report's system with what is trapped; the axes it is in.

    Without `ax` the drawing gets a figure of its own at its natural size; into `ax` it is fitted.
    """
    if ax is None:
        return schematic(report, theme=theme, date=date).axes[0]
    draw_on(ax, report, theme=theme, date=date)
    return ax
