"""What other programs call: the schematic of a system in axes of matplotlib."""

from matplotlib.axes import Axes

from plumbnet.analysis.report import Report
from plumbnet.api import check
from plumbnet.layout.system import System
from plumbnet.report.palette import Theme
from plumbnet.report.schematic.figure import draw_on, schematic


def draw(
    system: System,
    report: Report | None = None,
    ax: Axes | None = None,
    *,
    theme: Theme = "light",
    date: str | None = None,
) -> Axes:
    """Draw the schematic of a system; the axes it is in.

    What is trapped comes from `report`, made under the system's own rules where there is none. Without `ax` the
    drawing gets a figure of its own at its natural size (`draw(system).figure`); into `ax` it is fitted.
    Raises LayoutError as `check` does.
    """
    found = check(system) if report is None else report
    if ax is None:
        return schematic(found, theme=theme, date=date).axes[0]
    draw_on(ax, found, theme=theme, date=date)
    return ax
