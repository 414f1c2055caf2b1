"""Charts of a report: ladders of pressure, a warm-up in time, the size of a tank, the sums of a survey."""

from plumbnet.report.charts.chart_paper import figure_of
from plumbnet.report.charts.chart_writer import chart_file
from plumbnet.report.charts.ladders import ladder_chart
from plumbnet.report.charts.tank_charts import tank_chart
from plumbnet.report.charts.verdict_bars import verdicts_file
from plumbnet.report.charts.warmup_charts import lines, warmup_chart

__all__ = ["chart_file", "figure_of", "ladder_chart", "lines", "tank_chart", "verdicts_file", "warmup_chart"]
