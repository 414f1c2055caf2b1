"""Finds heated water with no way back to the street, what stops it, and what it needs.

>>> import plumbnet
>>> system = plumbnet.read("systems/open-house.yaml")
>>> [heater.verdict.value for heater in plumbnet.check(system).heaters]
['open']
"""

from collections.abc import Callable
from importlib import import_module
from typing import TYPE_CHECKING

from plumbnet.layout.shown import show_with

__all__ = ["Change", "check", "draw", "read", "read_bytes", "remedies", "sweep", "undo", "whatif", "with_changes"]

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from plumbnet.analysis.report import Report
    from plumbnet.api import check, read, read_bytes
    from plumbnet.layout.apply import with_changes
    from plumbnet.layout.change import Change
    from plumbnet.layout.system import System
    from plumbnet.layout.undo import undo
    from plumbnet.study.remedies import remedies
    from plumbnet.study.sweep import sweep
    from plumbnet.study.whatif import whatif

_WHEN_ASKED = {
    "Change": "plumbnet.layout.change",
    "check": "plumbnet.api",
    "read": "plumbnet.api",
    "read_bytes": "plumbnet.api",
    "remedies": "plumbnet.study.remedies",
    "sweep": "plumbnet.study.sweep",
    "undo": "plumbnet.layout.undo",
    "whatif": "plumbnet.study.whatif",
    "with_changes": "plumbnet.layout.apply",
}
"""Where to find what others may call: imported when it is first asked for; the help of the program asks for none."""


def __getattr__(name: str) -> object:
    """What is found when it is asked for, as PEP 562 has it. Raises AttributeError for a name that nobody knows."""
    if name not in _WHEN_ASKED:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(_WHEN_ASKED[name]), name)


def __dir__() -> list[str]:
    """What is there with what is found when it is asked for."""
    return sorted({*globals(), *__all__})


def draw(system: "System", report: "Report | None" = None, ax: "Axes | None" = None) -> "Axes":
    """Draw the schematic of a system into axes of matplotlib, or a figure of its own; see `report.drawing.axes`.

    Raises LayoutError as `check` does where no report is given.
    """
    drawn: Axes = import_module("plumbnet.report.drawing.axes").draw(system, report, ax)
    return drawn


def _display(name: str) -> Callable[[object], str]:
    """A function of `plumbnet.report.display` that is imported when something is first to be shown: drawing is slow."""

    def shown(thing: object) -> str:
        html: str = getattr(import_module("plumbnet.report.display"), name)(thing)
        return html

    return shown


show_with("plumbnet.analysis.report.Report", _display("report_html"))
show_with("plumbnet.layout.system.System", _display("system_html"))
