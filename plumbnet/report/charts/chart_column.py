"""One heater's column of a ladder chart: the water in it, its pressures with their labels, the verdict at its foot."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from matplotlib.axes import Axes
from matplotlib.patches import Rectangle

from plumbnet.report.charts.chart_paper import LINESPACING, POINTS, TextMeasure, extent_in
from plumbnet.report.charts.label_spread import spread_labels
from plumbnet.report.charts.ladder_levels import LevelMark, PressureLevel
from plumbnet.report.charts.pens import Pens
from plumbnet.report.text import settles
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.margins import StreetBand

_MIDDLE, _HALF, _REACH = 0.07, 0.035, 0.025  # of the tube, half its width, how far a mark stands out; in columns
_BESIDE = 0.018  # from the tube to the line of its band, in columns
_FROM, _TO = 0.22, 0.97  # between which labels stand, in columns
_GAP_IN = 0.04  # between two labels
_FOOT_SIZE = POINTS + 1.0
_FOOT_POINTS = 6.0  # from the foot of the tube to the verdict


@dataclass(frozen=True)
class Column:
    """A column at `left`, a unit to the right of the last; `up` gives a pressure in the units of the axis."""

    axes: Axes
    pens: Pens
    heater: HeaterFacts
    levels: Sequence[PressureLevel]
    left: float
    up: Callable[[float], float]
    band: StreetBand | None = None
    measure: TextMeasure = field(default_factory=TextMeasure)

    def draw(self) -> None:
        """All of it, on axes whose limits are set."""
        self._tube()
        self._band()
        for level in self.levels:
            self._mark(level)
        self._labels()
        self._foot()

    @property
    def _middle(self) -> float:
        return self.left + _MIDDLE

    @property
    def _across_in(self) -> float:
        """Width of a column."""
        low, high = self.axes.get_xlim()
        return extent_in(self.axes)[0] / (high - low)

    def _tube(self) -> None:
        """The tube, the water that stands in it cold, and how far that climbs."""
        low, high = self.axes.get_ylim()
        static = low if self.heater.static_pa is None else self.up(self.heater.static_pa)
        self._fill(low, high, "none", self.pens.faint)
        self._fill(low, static, self.pens.water, self.pens.water)
        self._fill(static, self._climbs_to, self.pens.rise, self.pens.water, hatch="/////")

    def _band(self) -> None:
        """Between what the street may stand while all holds: a line left of the tube, as far as the axis goes."""
        if self.band is not None:
            low, high = self.axes.get_ylim()
            ends = [max(low, self.up(self.band.low_pa)), min(high, self.up(self.band.high_pa))]
            beside = self._middle - _HALF - _BESIDE
            self.axes.plot(
                [beside, beside], ends, color=self.pens.water, linewidth=1.6, solid_capstyle="butt", zorder=2.0
            )

    def _fill(self, low: float, high: float, face: str, edge: str, hatch: str | None = None) -> None:
        if high > low:
            place, width = (self._middle - _HALF, low), 2.0 * _HALF
            box = Rectangle(place, width, high - low, facecolor=face, edgecolor=edge, linewidth=0.8, hatch=hatch)
            self.axes.add_patch(box)

    @property
    def _climbs_to(self) -> float:
        """Where heating brings the pressure: to rest, or to the first thing that gives."""
        heater = self.heater
        if heater.settled_pa is not None and settles(heater):
            return self.up(heater.settled_pa)
        return self.axes.get_ylim()[0] if heater.locked is None else self.up(heater.locked.opens_pa)

    def _mark(self, level: PressureLevel) -> None:
        """A bar for the limit, a wedge for what opens, a disc or a diamond for where the water stands."""
        at, out = self.up(level.pressure_pa), _HALF + _REACH
        if level.mark is LevelMark.TESTED:
            return
        if level.mark is LevelMark.LIMIT:
            bar = [self._middle - out, self._middle + out]
            self.axes.plot(bar, [at, at], color=self.pens.danger, linewidth=2.6, solid_capstyle="butt", zorder=3.0)
            return
        shape, colour, aside = {
            LevelMark.STATIC: ("o", self.pens.paper, 0.0),
            LevelMark.SETTLED: ("D", self.pens.ink, 0.0),
            LevelMark.OUTLET: ("<", self.pens.water, out),
            LevelMark.RELIEF: ("<", self.pens.danger, out),
        }[level.mark]
        self.axes.plot(
            [self._middle + aside],
            [at],
            shape,
            color=self.pens.ink,
            markerfacecolor=colour,
            markeredgewidth=0.8,
            markersize=5.0,
            clip_on=False,
            zorder=4.0,
        )

    def _labels(self) -> None:
        low, high = self.axes.get_ylim()
        high_in = extent_in(self.axes)[1]
        scale_in = high_in / (high - low)
        width_in = (_TO - _FROM) * self._across_in
        texts = [self.measure.wrapped(level.words, width_in) for level in self.levels]
        sizes_in = [self.measure.height_in(text) + _GAP_IN for text in texts]
        wanted_in = [
            (self.up(level.pressure_pa) - low) * scale_in + (size_in / 2.0 if level.mark is LevelMark.TESTED else 0.0)
            for level, size_in in zip(self.levels, sizes_in, strict=True)
        ]
        placed_in = spread_labels(wanted_in, sizes_in, low=0.0, high=high_in)
        for level, text, middle_in in zip(self.levels, texts, placed_in, strict=True):
            self._label(level, text, low + middle_in / scale_in)

    def _label(self, level: PressureLevel, text: str, at: float) -> None:
        """The words, and a line that leads to their mark."""
        end = self.left + _FROM
        self.axes.text(
            end, at, text, ha="left", va="center", color=self.pens.ink, linespacing=LINESPACING, parse_math=False
        )
        if level.mark is LevelMark.TESTED:
            return
        start = self._middle + _HALF + (2.0 if level.mark in {LevelMark.OUTLET, LevelMark.RELIEF} else 1.0) * _REACH
        lead = [start, end - 0.01]
        self.axes.plot(lead, [self.up(level.pressure_pa), at], color=self.pens.faint, linewidth=0.6, clip_on=False)

    def _foot(self) -> None:
        """The verdict in words, and the heater's name."""
        name = TextMeasure(_FOOT_SIZE).first_lines(self.heater.name, (_TO - 0.02) * self._across_in, most=3)
        self.axes.annotate(
            f"{self.heater.verdict.value.upper()}\n{name}",
            (self.left + 0.02, self.axes.get_ylim()[0]),
            xytext=(0.0, -_FOOT_POINTS),
            textcoords="offset points",
            ha="left",
            va="top",
            color=self.pens.ink,
            fontsize=_FOOT_SIZE,
            parse_math=False,
            annotation_clip=False,
        )
