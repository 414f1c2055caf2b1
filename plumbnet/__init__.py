"""Finds heated water with no way back to the street, what stops it, and what it needs.

>>> import plumbnet
>>> system = plumbnet.read("systems/open-house.yaml")
>>> [heater.verdict.value for heater in plumbnet.check(system).heaters]
['open']

What is offered here is imported when it is first asked for. Quantities are SI, with the unit at the end of their names;
pressures are gauge.
"""

from importlib import import_module
from typing import TYPE_CHECKING

from plumbnet.layout.shown import show_with

__all__ = [
    "Change",
    "ChangeError",
    "LayoutError",
    "NoChart",
    "NoWarmUp",
    "Picture",
    "Profile",
    "Report",
    "System",
    "UnknownForm",
    "UnknownHeater",
    "UnknownMethod",
    "UnknownProfile",
    "UnknownScenario",
    "__version__",
    "chart",
    "check",
    "compare",
    "draw",
    "read",
    "read_bytes",
    "remedies",
    "size",
    "sweep",
    "trace",
    "undo",
    "warmup",
    "whatif",
    "with_changes",
]

if TYPE_CHECKING:
    from plumbnet.analysis.report import Report
    from plumbnet.analysis.warming import NoWarmUp
    from plumbnet.api import check, read, read_bytes
    from plumbnet.layout.apply import with_changes
    from plumbnet.layout.change import Change
    from plumbnet.layout.fault import LayoutError
    from plumbnet.layout.refusal import ChangeError
    from plumbnet.layout.system import System
    from plumbnet.layout.undo import undo
    from plumbnet.library.chart import chart
    from plumbnet.library.compare import compare
    from plumbnet.library.draw import draw
    from plumbnet.library.form import UnknownForm
    from plumbnet.library.heater import UnknownHeater
    from plumbnet.library.method import UnknownMethod
    from plumbnet.library.picture import Picture
    from plumbnet.library.size import size
    from plumbnet.library.trace import trace
    from plumbnet.library.warmup import warmup
    from plumbnet.rules.profile import Profile, UnknownProfile
    from plumbnet.study.remedies import remedies
    from plumbnet.study.sweep import sweep
    from plumbnet.study.tank_size import NoChart
    from plumbnet.study.whatif import UnknownScenario, whatif

    __version__: str

_WHEN_ASKED = {
    "Change": "plumbnet.layout.change",
    "ChangeError": "plumbnet.layout.refusal",
    "LayoutError": "plumbnet.layout.fault",
    "NoChart": "plumbnet.study.tank_size",
    "NoWarmUp": "plumbnet.analysis.warming",
    "Picture": "plumbnet.library.picture",
    "Profile": "plumbnet.rules.profile",
    "Report": "plumbnet.analysis.report",
    "System": "plumbnet.layout.system",
    "UnknownForm": "plumbnet.library.form",
    "UnknownHeater": "plumbnet.library.heater",
    "UnknownMethod": "plumbnet.library.method",
    "UnknownProfile": "plumbnet.rules.profile",
    "UnknownScenario": "plumbnet.study.whatif",
    "chart": "plumbnet.library.chart",
    "check": "plumbnet.api",
    "compare": "plumbnet.library.compare",
    "draw": "plumbnet.library.draw",
    "read": "plumbnet.api",
    "read_bytes": "plumbnet.api",
    "remedies": "plumbnet.study.remedies",
    "size": "plumbnet.library.size",
    "sweep": "plumbnet.study.sweep",
    "trace": "plumbnet.library.trace",
    "undo": "plumbnet.layout.undo",
    "warmup": "plumbnet.library.warmup",
    "whatif": "plumbnet.study.whatif",
    "with_changes": "plumbnet.layout.apply",
}
"""Where to find what is offered: imported when it is first asked for."""


def __getattr__(name: str) -> object:
    """What is found when it is asked for, as PEP 562 has it. Raises AttributeError for a name that nobody knows."""
    if name == "__version__":
        return import_module("importlib.metadata").version(__name__)
    if name not in _WHEN_ASKED:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(_WHEN_ASKED[name]), name)


def __dir__() -> list[str]:
    """What is offered, for whoever looks."""
    return sorted({*globals(), *__all__})


show_with("Report", "dict", "plumbnet.library.answers", "report_dict")
show_with("Report", "frame", "plumbnet.library.frame", "heaters_frame")
show_with("Report", "html", "plumbnet.report.display", "report_html")
show_with("Report", "text", "plumbnet.library.answers", "full_text")
show_with("Sheet", "text", "plumbnet.report.sheet", "sheet_text")
show_with("Sweep", "text", "plumbnet.report.sweep", "sweep_text")
show_with("System", "changed", "plumbnet.layout.apply", "with_changes")
show_with("System", "html", "plumbnet.library.answers", "layout_html")
show_with("Warming", "text", "plumbnet.report.warmup", "to_text")
show_with("WhatIf", "text", "plumbnet.report.whatif", "whatif_text")
