"""Words at the right ends of lines, so that no legend is needed: each beside its line, none over another."""

from collections.abc import Sequence

from matplotlib.axes import Axes

from plumbnet.report.charts.chart_paper import LINESPACING, TextMeasure, extent_in
from plumbnet.report.charts.label_spread import spread_labels
from plumbnet.report.charts.pens import Pens

_LEAD_IN = 0.22  # from the axes to the words
_GAP_IN = 0.05  # between two of them


def label_ends(axes: Axes, ends: Sequence[tuple[float, str]], pens: Pens, *, room_in: float) -> None:
    """Write words beside the right edge of axes, each at a height in their data; `room_in` wide at most, in inches."""
    measure = TextMeasure()
    (low, high), (width_in, height_in) = axes.get_ylim(), extent_in(axes)
    texts = [measure.wrapped(words, room_in - _LEAD_IN) for _, words in ends]
    sizes_in = [measure.height_in(text) + _GAP_IN for text in texts]
    wanted_in = [(min(max(at, low), high) - low) / (high - low) * height_in for at, _ in ends]
    beside = 1.0 + _LEAD_IN / width_in
    placed_in = spread_labels(wanted_in, sizes_in, low=0.0, high=height_in)
    for text, start_in, middle_in in zip(texts, wanted_in, placed_in, strict=True):
        start, middle = start_in / height_in, middle_in / height_in
        axes.plot(
            [1.005, beside - 0.01],
            [start, middle],
            color=pens.faint,
            linewidth=0.6,
            clip_on=False,
            transform=axes.transAxes,
        )
        axes.text(
            beside,
            middle,
            text,
            va="center",
            color=pens.ink,
            linespacing=LINESPACING,
            transform=axes.transAxes,
            parse_math=False,
        )
