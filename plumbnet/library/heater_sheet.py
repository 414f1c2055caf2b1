"""The calculation sheet of a heater by its name."""

from plumbnet.analysis import Report
from plumbnet.analysis.sizing_sheet import Sheet, sheet
from plumbnet.api import Layout, as_report
from plumbnet.library.heater_choice import heater_named
from plumbnet.library.method_choice import demand_method


def size(layout: Layout | Report, heater: str, *, method: str | None = None) -> Sheet:
    """The calculation sheet of the tank that a heater needs: every step with formula, numbers, units and source.

    `layout` is a report, or what `check` makes one of. `method` stands in place of the heater's own or the profile's.
    Numbers are SI; pressures gauge or absolute, as each says. Raises UnknownHeater, UnknownMethod, what `check` does.

    >>> sheet = size("systems/house-with-check.yaml", "heater")
    >>> round(sheet.outcome.tank_m3, 4), round(sheet.outcome.charge_pa)
    (0.0129, 427475)
    >>> print(sheet.to_text().splitlines()[0])
    Expansion tank for heater
    """
    demand_method(method)
    report = as_report(layout)
    return sheet(report, heater_named(report, heater), method=method)
