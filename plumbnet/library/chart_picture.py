"""The charts of a layout as pictures."""

from pathlib import Path
from typing import Literal, TypeAlias

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.library.heater_choice import heater_named, only_heater
from plumbnet.library.picture import Picture, form_wanted, pictured
from plumbnet.report.charts import chart_file
from plumbnet.report.figures import Form, Theme
from plumbnet.study.dossier import Sizes, WarmUps, sizes, warm_ups_with_tank

Charted: TypeAlias = Literal["ladder", "warmup", "tank"]
"""What a chart is of."""


def chart(  # noqa: PLR0913  what is charted and how, most of it left out
    layout: Layout | Report,
    of: Charted,
    heater: str | None = None,
    path: str | Path | None = None,
    *,
    form: Form | None = None,
    theme: Theme = "light",
) -> Picture:
    """A chart: of the `ladder` of pressures, of a `warmup` in time, or of the size of a `tank`; a notebook shows it.

    `layout` is a report, or what `check` makes one of; scales are in its units. Without a `heater` the ladders of all
    are shown, and the warm-up or tank of the only one. With a `path` it is written there as well, as its ending says:
    .svg, .pdf or .png. Raises UnknownHeater, NoChart and NoWarmUp where there is nothing to draw, UnknownForm for
    another ending, OSError where it cannot be written, and what `check` does.

    >>> chart("systems/house-with-check.yaml", "tank", form="png").content[1:4]
    b'PNG'
    """
    wanted, report = form_wanted(form, path), as_report(layout)
    name = _name(report, of, heater)
    return pictured(chart_file(report, name, _shown(report, of, name), wanted, theme=theme), wanted, path)


def _name(report: Report, of: Charted, heater: str | None) -> str:
    """The heater that is meant; none where the ladders of all are."""
    if heater is not None:
        return heater_named(report, heater).name
    return "" if of == "ladder" else only_heater(report).name


def _shown(report: Report, of: Charted, heater: str) -> Sizes | WarmUps | None:
    """What a chart shows, worked out; a ladder stands in the report. Raises NoChart, NoWarmUp."""
    if of == "tank":
        return sizes(report, heater)
    return warm_ups_with_tank(report, heater) if of == "warmup" else None
