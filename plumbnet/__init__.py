"""Finds heated water with no way back to the street, what stops it, and what it needs.

>>> import plumbnet
>>> system = plumbnet.read("systems/open-house.yaml")
>>> [heater.verdict.value for heater in plumbnet.check(system).heaters]
['open']
"""

from importlib import import_module
from typing import TYPE_CHECKING

from plumbnet.analysis.report import Report
from plumbnet.api import check, read, read_bytes
from plumbnet.layout.apply import with_changes
from plumbnet.layout.change import Change
from plumbnet.layout.fault import LayoutError
from plumbnet.layout.shown import show_with
from plumbnet.layout.system import System

__all__ = ["Change", "check", "draw", "read", "read_bytes", "remedies", "sweep", "undo", "whatif", "with_changes"]

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from plumbnet.layout.undo import undo
    from plumbnet.study.remedies import remedies
    from plumbnet.study.sweep import sweep
    from plumbnet.study.whatif import whatif

_WHEN_ASKED = {
    "remedies": "plumbnet.study.remedies",
    "sweep": "plumbnet.study.sweep",
    "undo": "plumbnet.layout.undo",
    "whatif": "plumbnet.study.whatif",
}
"""Where to find what a check does without: imported when it is first asked for."""


def __getattr__(name: str) -> object:
    """What is found when it is asked for, as PEP 562 has it. Raises AttributeError for a name that nobody knows."""
    if name not in _WHEN_ASKED:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(_WHEN_ASKED[name]), name)


def draw(system: System, report: Report | None = None, ax: "Axes | None" = None) -> "Axes":
    """Draw the schematic of a system into axes of matplotlib, or a figure of its own; see `report.schematic.axes`.

    Raises LayoutError as `check` does where no report is given.
    """
    drawn: Axes = import_module("plumbnet.report.schematic.axes").draw(report or check(system), ax)
    return drawn


def _report_html(report: Report) -> str:
    """A report as a notebook shows it; what shows it is imported only then: drawing is slow."""
    html: str = import_module("plumbnet.report.display").report_html(report)
    return html


def _system_html(system: System) -> str:
    """A system as a notebook shows it, with the report on it or why there is none."""
    answer: Report | LayoutError
    try:
        answer = check(system)
    except LayoutError as error:
        answer = error
    html: str = import_module("plumbnet.report.display").system_html(system, answer)
    return html


show_with(Report, _report_html)
show_with(System, _system_html)
