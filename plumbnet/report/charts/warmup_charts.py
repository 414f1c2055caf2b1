"""A heater to its warm-up chart: temperature and pressure in time as it is and once it is cured, with what happens."""

from collections.abc import Sequence
from string import ascii_lowercase, ascii_uppercase, digits

from matplotlib.axes import Axes

from plumbnet.analysis import Report
from plumbnet.layout.units import PRESSURE, TEMPERATURE
from plumbnet.report.charts.chart_paper import (
    CHART_LINE,
    LINESPACING,
    POINTS,
    TextMeasure,
    axes_of,
    extent_in,
    figure_of,
    heading,
    inked,
    style,
)
from plumbnet.report.charts.chart_scale import unit
from plumbnet.report.charts.end_labels import label_ends
from plumbnet.report.charts.label_spread import spread_labels
from plumbnet.report.charts.pens import PENS, Pens
from plumbnet.report.charts.warmup_lines import Course, EventMark
from plumbnet.report.figures import Theme
from plumbnet.study.dossier import WarmUps

WIDTH_IN, HEIGHT_IN = 7.2, 4.3
"""Size of a sheet less the list of what happens, in inches."""
AS_IT_IS = "as it is"
"""Said of the layout of the file."""
RIGID, TYPICAL = f"{AS_IT_IS}, rigid walls", f"{AS_IT_IS}, typical walls"
"""Said of it where the two ends of the bracket differ."""
CURED = "cured"
"""Said of it with the remedy, which the list names."""
_LEFT_IN, _RIGHT_IN, _TOP_IN, _BOTTOM_IN = 0.75, 1.2, 0.55, 0.55
_PRESSURE, _TEMPERATURE = 0.6, 0.3  # shares of the height
_KEY_FROM_IN = 0.5  # from the axes down to the list
_MARK_IN = 0.16  # room of a mark's letter
_SYMBOLS = {AS_IT_IS: digits[1:], TYPICAL: digits[1:], RIGID: ascii_uppercase, CURED: ascii_lowercase}
_DASHES = {AS_IT_IS: "-", TYPICAL: "-", RIGID: "-.", CURED: "--"}


def lines(found: WarmUps) -> dict[str, Course]:
    """Each line with what is written at its end: as it is, both ends of the bracket where they differ, then cured."""
    warming = found.as_it_is
    if warming.walls_matter:
        here = {TYPICAL: Course(warming), RIGID: Course(warming.rigid)}
    else:
        here = {AS_IT_IS: Course(warming)}
    return here | ({} if found.cured is None else {CURED: Course(found.cured)})


def warmup_chart(found: WarmUps, *, theme: Theme = "light") -> Axes:
    """Temperature and pressure of a heater from cold, with every fixture shut, until all is hot.

    `found` is that of `study.warm_ups`. Returns the axes of pressure; those of temperature stand above them.
    """
    warming, drawn = found.as_it_is, lines(found)
    with style():
        key = _key(drawn, found.remedy)
        axes = _sheet(key, PENS[theme])
        above = _parted(axes)
        _draw(axes, above, drawn, PENS[theme])
        _write(axes, key, PENS[theme])
        _scales(axes, above, warming.report)
        heading(above, warming.report, f"warm-up of {warming.fired[0].name} from cold, every fixture shut")
        for each in (axes, above):
            inked(each, PENS[theme])
    return axes


def _key(drawn: dict[str, Course], remedy: str) -> list[str]:
    """What each mark stands for, and what cures, in lines."""
    width_in = WIDTH_IN - _LEFT_IN - 0.2
    rows = [f"{CURED}: {remedy}"] if CURED in drawn else []
    rows += [
        f"{symbol}  {mark.words}"
        for words, course in drawn.items()
        for symbol, mark in zip(_SYMBOLS[words], course.marks(), strict=False)
    ]
    return [line for row in rows for line in TextMeasure().wrapped(row, width_in).split("\n")]


def _sheet(key: Sequence[str], pens: Pens) -> Axes:
    key_in = len(key) * POINTS * CHART_LINE / 72.0 + 0.1
    margins_in = (_LEFT_IN, _BOTTOM_IN + key_in, _RIGHT_IN, _TOP_IN)
    return axes_of((WIDTH_IN, HEIGHT_IN + key_in), margins_in, pens)


def _parted(axes: Axes) -> Axes:
    """Axes made lower, and new ones over them that share their time."""
    box = axes.get_position()
    axes.set_position((box.x0, box.y0, box.width, box.height * _PRESSURE))
    top = box.height * _TEMPERATURE
    return figure_of(axes).add_axes((box.x0, box.y1 - top, box.width, top), sharex=axes)


def _draw(axes: Axes, above: Axes, drawn: dict[str, Course], pens: Pens) -> None:
    for words, course in drawn.items():
        dashes, colour = _DASHES[words], pens.water if words == CURED else pens.danger
        axes.plot(course.minutes, course.pressures, dashes, color=colour, linewidth=1.8, zorder=3.0)
        above.plot(course.minutes, course.temperatures, dashes, color=pens.ink, linewidth=1.2, zorder=3.0)
    limit = next(iter(drawn.values())).limit
    axes.axhline(limit, color=pens.ink, linewidth=1.0, linestyle=(0.0, (1.0, 2.0)))
    axes.set_xlim(0.0, max(course.minutes[-1] for course in drawn.values()) or 1.0)
    axes.margins(y=0.12)
    axes.autoscale_view(scalex=False)
    ends = [(course.pressures[-1], words) for words, course in drawn.items()]
    label_ends(axes, [*ends, (limit, f"limit {limit:.4g}")], pens, room_in=_RIGHT_IN - 0.1)
    _marks(axes, [each for words in drawn if words != CURED for each in _lettered(drawn, words)], pens, above=True)
    _marks(axes, _lettered(drawn, CURED), pens, above=False)


def _lettered(drawn: dict[str, Course], words: str) -> list[tuple[str, EventMark]]:
    """The marks of a line, each with its letter; none where it is not drawn."""
    return list(zip(_SYMBOLS[words], drawn[words].marks(), strict=False)) if words in drawn else []


def _marks(axes: Axes, lettered: Sequence[tuple[str, EventMark]], pens: Pens, *, above: bool) -> None:
    """A dot on the line where something happens, its letter beside it."""
    minutes = axes.get_xlim()[1]
    width_in, _ = extent_in(axes)
    marks = sorted(lettered, key=lambda each: each[1].minutes)
    wanted_in = [mark.minutes / minutes * width_in for _, mark in marks]
    placed_in = spread_labels(wanted_in, [_MARK_IN] * len(marks), low=0.0, high=width_in)
    for (symbol, mark), at_in, wanted in zip(marks, placed_in, wanted_in, strict=True):
        axes.plot([mark.minutes], [mark.pressure], "o", color=pens.ink, markersize=3.5, zorder=4.0, clip_on=False)
        axes.annotate(
            symbol,
            (mark.minutes, mark.pressure),
            xytext=((at_in - wanted) * 72.0, 5.0 if above else -5.0),
            textcoords="offset points",
            ha="center",
            va="bottom" if above else "top",
            color=pens.ink,
            weight="bold",
            annotation_clip=False,
        )


def _write(axes: Axes, key: Sequence[str], pens: Pens) -> None:
    """The list of what happens, under the axes."""
    axes.annotate(
        "\n".join(key),
        (0.0, 0.0),
        xycoords="axes fraction",
        xytext=(0.0, -72.0 * _KEY_FROM_IN),
        textcoords="offset points",
        va="top",
        color=pens.ink,
        linespacing=LINESPACING,
        parse_math=False,
        annotation_clip=False,
    )


def _scales(axes: Axes, above: Axes, report: Report) -> None:
    units = report.facts.units
    axes.set_xlabel("time, min")
    axes.set_ylabel(f"pressure, {unit(PRESSURE, units)}")
    above.set_ylabel(f"water, {unit(TEMPERATURE, units)}")
    above.tick_params(labelbottom=False)
