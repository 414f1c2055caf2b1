"""The margins of a layout, or of one of its heaters."""

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.library.heater_choice import heater_named
from plumbnet.study.margins import Margins, margins_of
from plumbnet.study.remedies import remedies_if_small


def margins(layout: Layout | Report, heater: str | None = None) -> Margins:
    """How far each number that nobody knows exactly may stray before a verdict or an error turns; values are SI.

    Of each the nearest turn on either side; how far the first remedy of each heater in trouble holds, too, where the
    layout is small. `layout` is a report, or what `check` makes one of; with a `heater` only its verdict and the errors
    about it count. Raises UnknownHeater, and what `check` does.

    >>> import plumbnet
    >>> found = plumbnet.margins("systems/bakery-tank-right.yaml")
    >>> charge = next(one for one in found.numbers if one.number.field == "precharge")
    >>> [round(one.holds_to / 6894.757) for one in (charge.below, charge.above)], found.checks <= 60
    ([44, 52], True)
    """
    report = as_report(layout)
    if heater is not None:
        heater_named(report, heater)
    return margins_of(report, heater=heater, found=remedies_if_small(report))
