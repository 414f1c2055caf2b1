"""What a chart shows to the bytes of a file with that chart alone."""

from matplotlib.axes import Axes

from plumbnet.analysis import Report
from plumbnet.report.charts.chart_paper import figure_of
from plumbnet.report.charts.ladders import ladder_chart
from plumbnet.report.charts.tank_charts import tank_chart
from plumbnet.report.charts.warmup_charts import warmup_chart
from plumbnet.report.figures import Form, Theme, saved
from plumbnet.study.dossier import Sizes, WarmUps


def chart_file(
    report: Report, heater: str, found: Sizes | WarmUps | None, form: Form, *, theme: Theme = "light"
) -> bytes:
    """A chart as a file: of a tank, of warm-ups, or else of the ladder of a heater, of all where the name is empty."""
    of, axes = _chart(report, heater, found, theme)
    name = report.system.title or report.system.record.file
    return saved(figure_of(axes), form, title=f"{name}: {of} chart{f' of {heater}' if heater else ''}")


def _chart(report: Report, heater: str, found: Sizes | WarmUps | None, theme: Theme) -> tuple[str, Axes]:
    match found:
        case None:
            return "ladder", ladder_chart(report, heaters=[heater] if heater else None, theme=theme)
        case WarmUps():
            return "warmup", warmup_chart(found, theme=theme)
        case Sizes():
            return "tank", tank_chart(report, heater, found, theme=theme)
