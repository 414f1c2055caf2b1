"""Paper and pen of every chart: axes to draw on, one plain style, and texts measured before they are placed."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from itertools import islice

from matplotlib import rcParams
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.textpath import text_to_path

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.charts.pens import Pens
from plumbnet.report.figures import settled

FONT = "DejaVu Sans"
"""The family that comes with the drawing library, so that a chart is the same on every machine."""
POINTS = 8.0
"""Size of ordinary text."""
TITLE_POINTS = 10.0
"""Size of the heading."""
CHART_LINE = 1.25
"""Lines stand so many times their size apart."""
LINESPACING = CHART_LINE / 1.164
"""The same as the drawing library counts it, of the height of the font's letters; 1.164 is that of this font."""
DPI = 100.0
"""Dots to an inch at which texts are measured."""


@contextmanager
def style() -> Iterator[None]:
    """The style of charts, whatever the reader's own settings are."""
    with settled():
        rcParams["font.size"] = POINTS
        rcParams["axes.formatter.useoffset"] = False
        rcParams["axes.spines.top"] = False
        rcParams["axes.spines.right"] = False
        rcParams["axes.titlesize"] = TITLE_POINTS
        rcParams["axes.titlelocation"] = "left"
        rcParams["axes.titlepad"] = 10.0
        rcParams["hatch.linewidth"] = 0.6
        yield


def axes_of(size_in: tuple[float, float], margins_in: tuple[float, float, float, float], pens: Pens) -> Axes:
    """New axes alone on a sheet of that width and height; margins left, bottom, right, top. All in inches."""
    (width, height), (left, bottom, right, top) = size_in, margins_in
    figure = Figure(figsize=size_in, dpi=DPI, facecolor=pens.paper)
    return figure.add_axes(
        (left / width, bottom / height, (width - left - right) / width, (height - bottom - top) / height)
    )


def figure_of(axes: Axes) -> Figure:
    """The whole figure that axes stand in. Raises ValueError where they stand in none."""
    figure = axes.get_figure(root=True)
    if figure is None:
        raise ValueError("these axes stand in no figure")
    return figure


def extent_in(axes: Axes) -> tuple[float, float]:
    """Width and height of axes, in inches."""
    box, dpi = axes.get_window_extent(), figure_of(axes).dpi
    return float(box.width / dpi), float(box.height / dpi)


def heading(axes: Axes, report: Report, words: str) -> None:
    """What the axes show, behind the title of the building and the scenario; two lines at most."""
    names = ", ".join(name for name in (report.system.title, report.scenario) if name)
    title = f"{names}: {words}" if names else f"{words[:1].upper()}{words[1:]}"
    text = TextMeasure(TITLE_POINTS).first_lines(title, extent_in(axes)[0], most=2)
    axes.set_title(text, parse_math=False)


def inked(axes: Axes, pens: Pens) -> None:
    """Axes in the colours of the theme: ground, scales, and the words on them."""
    axes.set_facecolor(pens.paper)
    for spine in axes.spines.values():
        spine.set_color(pens.faint)
    axes.tick_params(colors=pens.faint, labelcolor=pens.ink)
    for words in (axes.xaxis.label, axes.yaxis.label, axes.title):
        words.set_color(pens.ink)


@dataclass(frozen=True)
class TextMeasure:
    """Widths and heights of texts, in inches, as they will be drawn."""

    points: float = POINTS

    def width_in(self, text: str) -> float:
        """Width of one line."""
        return _width_in(text, self.points)

    def height_in(self, text: str) -> float:
        """Height of all lines of a text."""
        return lines_of(text) * self.points * CHART_LINE / 72.0

    def wrapped(self, text: str, width_in: float) -> str:
        """A text broken into lines of at most that width, within a word only where that is longer."""
        return "\n".join(self._lines(text, width_in))

    def first_lines(self, text: str, width_in: float, *, most: int) -> str:
        """The same, of so many lines at most; three dots say that there was more."""
        lines = list(islice(self._lines(text, width_in), most + 1))
        if len(lines) <= most:
            return "\n".join(lines)
        last = lines[most - 1]
        while last and self.width_in(f"{last}...") > width_in:
            last = last[:-1]
        return "\n".join([*lines[: most - 1], f"{last}..."])

    def _lines(self, text: str, width_in: float) -> Iterator[str]:
        """The lines of a text, one by one: of one without end only those that are asked for are measured."""
        line = ""
        for word in visible(text).split(" "):
            longer = f"{line} {word}" if line else word
            if self.width_in(longer) <= width_in:
                line = longer
                continue
            if line:
                yield line
            pieces = self._pieces(word, width_in)
            line = next(pieces)
            for piece in pieces:
                yield line
                line = piece
        yield line

    def _pieces(self, word: str, width_in: float) -> Iterator[str]:
        """A word in pieces of at most that width, one letter at the least."""
        piece = ""
        for letter in word:
            if piece and self.width_in(piece + letter) > width_in:
                yield piece
                piece = ""
            piece += letter
        yield piece


@lru_cache(maxsize=8192)
def _width_in(text: str, points: float) -> float:
    font = FontProperties(family=FONT, size=points)
    width, _, _ = text_to_path.get_text_width_height_descent(text, font, ismath=False)
    return width / 72.0


def lines_of(text: str) -> int:
    """How many lines a text has."""
    return text.count("\n") + 1
