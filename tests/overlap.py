"""Texts of a figure that lie over one another or off the sheet, by the extents with which they are drawn."""

from collections.abc import Iterator
from itertools import combinations

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.text import Text
from matplotlib.transforms import Bbox

from plumbnet.report.charts.chart_paper import figure_of, style

HAIR = 0.6
"""Pixels by which two boxes of letters may touch."""


def written(axes: Axes) -> list[str]:
    """All texts of the figure that axes stand in, in the order in which they were drawn."""
    return [text.get_text() for text, _ in _boxes(figure_of(axes))]


def places(line: Line2D) -> list[tuple[float, float]]:
    """The points of a line, in the data of its axes."""
    across, up = (np.asarray(each, dtype=float).tolist() for each in line.get_data())
    return list(zip(across, up, strict=True))


def overlapping(axes: Axes) -> list[tuple[str, str]]:
    """Pairs of texts that lie over one another."""
    return [
        (one.get_text(), other.get_text())
        for (one, a), (other, b) in combinations(_boxes(figure_of(axes)), 2)
        if min(a.x1, b.x1) - max(a.x0, b.x0) > HAIR and min(a.y1, b.y1) - max(a.y0, b.y0) > HAIR
    ]


def off_the_sheet(axes: Axes) -> list[str]:
    """Texts that stand out over the edge of the figure."""
    figure = figure_of(axes)
    sheet = figure.bbox
    return [
        text.get_text()
        for text, box in _boxes(figure)
        if box.x0 < sheet.x0 - HAIR or box.x1 > sheet.x1 + HAIR or box.y0 < sheet.y0 - HAIR or box.y1 > sheet.y1 + HAIR
    ]


def _boxes(figure: Figure) -> list[tuple[Text, Bbox]]:
    return list(_drawn(figure))


def _drawn(figure: Figure) -> Iterator[tuple[Text, Bbox]]:
    with style():
        figure.draw_without_rendering()
        beyond = {id(label) for axes in figure.axes for label in _beyond(axes)}
        for text in figure.findobj(Text):
            if isinstance(text, Text) and text.get_visible() and text.get_text().strip() and id(text) not in beyond:
                yield text, text.get_window_extent()


def _beyond(axes: Axes) -> Iterator[Text]:
    """Words of ticks that lie beyond the ends of their scale, and are not drawn."""
    for axis in (axes.xaxis, axes.yaxis):
        low, high = sorted(axis.get_view_interval())
        for tick in axis.get_major_ticks():
            if not low <= tick.get_loc() <= high:
                yield from (tick.label1, tick.label2)
