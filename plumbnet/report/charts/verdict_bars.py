"""The sums of a survey to bars: how many heaters have which verdict, as they are and with the what-if made."""

from dataclasses import replace

from matplotlib.axes import Axes
from matplotlib.ticker import MaxNLocator

from plumbnet.drawing import Hatch, Shade
from plumbnet.report.charts.chart_paper import axes_of, figure_of, inked, style
from plumbnet.report.charts.pens import PENS, Pens
from plumbnet.report.figures import PALETTES, Form, Theme, saved
from plumbnet.report.output import Fate
from plumbnet.report.survey import SurveySums
from plumbnet.report.text import counted

WIDTH_IN, HEIGHT_IN = 7.2, 4.2
"""Size of a sheet, in inches."""
_MARGINS_IN = (0.95, 0.45, 0.3, 0.55)  # left, bottom, right, top
_BAR = 0.38  # height of one of two bars, in rows
_ROOM = 1.3  # the scale ends so many times beyond the longest bar, for its words
_HATCHES: dict[Hatch, str] = {
    "": "",
    "rising": "////",
    "falling": "\\\\\\\\",
    "crossed": "xxxx",
    "level": "----",
    "dotted": "....",
}


def verdicts_file(sums: SurveySums, form: Form) -> bytes:
    """The chart as a file."""
    return saved(figure_of(verdicts_chart(sums)), form, title=_title(sums))


def verdicts_chart(sums: SurveySums, *, theme: Theme = "light") -> Axes:
    """A row for each verdict, the best on top: the bar of what is, and below it that of what would be."""
    pens, before, after = PENS[theme], sums.before, sums.after
    with style():
        axes = axes_of((WIDTH_IN, HEIGHT_IN), _MARGINS_IN, pens)
        axes.set_xlim(0.0, _ROOM * max(1, *before.values(), *after.values()))
        axes.set_ylim(len(before) - 0.4, -0.6)
        for row, (verdict, count) in enumerate(before.items()):
            shade = PALETTES[theme].shades[verdict]
            if not sums.is_supposed:
                _bar(axes, row, count, shade)
                _words(axes, (count, row), str(count), pens)
                continue
            above, below = row - _BAR / 2.0, row + _BAR / 2.0
            _bar(axes, above, count, replace(shade, fill=pens.paper, hatch=""))
            _words(axes, (count, above), f"{count} as they are", pens)
            _bar(axes, below, after[verdict], shade)
            _words(axes, (after[verdict], below), f"{after[verdict]} with the what-if", pens)
        axes.set_yticks(range(len(before)), [verdict.value for verdict in before])
        axes.xaxis.set_major_locator(MaxNLocator(integer=True))
        axes.set_xlabel("heaters")
        axes.set_title(_title(sums), parse_math=False)
        inked(axes, pens)
    return axes


def _bar(axes: Axes, at: float, count: int, shade: Shade) -> None:
    if count:
        hatch = _HATCHES[shade.hatch]
        axes.barh([at], [count], _BAR, color=shade.fill, edgecolor=shade.edge, linewidth=0.9, hatch=hatch)


def _words(axes: Axes, at: tuple[float, float], words: str, pens: Pens) -> None:
    """Words at the end of a bar."""
    axes.annotate(words, at, xytext=(4.0, 0.0), textcoords="offset points", va="center", color=pens.ink)


def _title(sums: SurveySums) -> str:
    return f"Heaters of {counted(sums.files[Fate.CHECKED], 'layout')} by verdict"
