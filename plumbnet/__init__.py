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

from plumbnet.layout.presentation import show_with

__all__ = [
    "Change",
    "ChangeError",
    "LayoutError",
    "NoChart",
    "NoWarmUp",
    "NoWidget",
    "OwnAcceptances",
    "Picture",
    "Profile",
    "Report",
    "Rules",
    "System",
    "TableError",
    "UnknownCircuit",
    "UnknownExample",
    "UnknownForm",
    "UnknownHeater",
    "UnknownMethod",
    "UnknownProfile",
    "UnknownScenario",
    "__version__",
    "board",
    "chart",
    "check",
    "compare",
    "draw",
    "example",
    "export_tables",
    "import_tables",
    "margins",
    "read",
    "read_bytes",
    "remedies",
    "review",
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
    from plumbnet.analysis.warmup.heater_warmup import NoWarmUp
    from plumbnet.api import check, read, read_bytes
    from plumbnet.layout.edits.apply import with_changes
    from plumbnet.layout.edits.edit_draft import ChangeError
    from plumbnet.layout.edits.inverse import undo
    from plumbnet.layout.model.change import Change
    from plumbnet.layout.model.system import System
    from plumbnet.layout.tables.table_faults import TableError
    from plumbnet.layout.yaml.fault import LayoutError
    from plumbnet.library.board_call import NoWidget, board
    from plumbnet.library.chart_picture import chart
    from plumbnet.library.comparison import compare
    from plumbnet.library.example_call import UnknownExample, example
    from plumbnet.library.heater_choice import UnknownHeater
    from plumbnet.library.heater_sheet import size
    from plumbnet.library.heater_trace import trace
    from plumbnet.library.margins_call import margins
    from plumbnet.library.method_choice import UnknownMethod
    from plumbnet.library.picture import Picture
    from plumbnet.library.picture_form import UnknownForm
    from plumbnet.library.review_call import review
    from plumbnet.library.schematic_picture import draw
    from plumbnet.library.table_calls import export_tables, import_tables
    from plumbnet.library.warmup_run import warmup
    from plumbnet.rules.accepting.own_acceptances import OwnAcceptances
    from plumbnet.rules.circuit_rules import Rules, UnknownCircuit
    from plumbnet.rules.rule_profile import Profile, UnknownProfile
    from plumbnet.study.contingency.event_sweep import sweep
    from plumbnet.study.dossier.tank_curves import NoChart
    from plumbnet.study.remedies.remedy_search import remedies
    from plumbnet.study.whatif.what_if import UnknownScenario, whatif

    __version__: str

_WHEN_ASKED = {
    "Change": "plumbnet.layout.model.change",
    "ChangeError": "plumbnet.layout.edits.edit_draft",
    "LayoutError": "plumbnet.layout.yaml.fault",
    "NoChart": "plumbnet.study.dossier.tank_curves",
    "NoWarmUp": "plumbnet.analysis.warmup.heater_warmup",
    "NoWidget": "plumbnet.library.board_call",
    "OwnAcceptances": "plumbnet.rules.accepting.own_acceptances",
    "Picture": "plumbnet.library.picture",
    "Profile": "plumbnet.rules.rule_profile",
    "Report": "plumbnet.analysis.report",
    "Rules": "plumbnet.rules.circuit_rules",
    "System": "plumbnet.layout.model.system",
    "TableError": "plumbnet.layout.tables.table_faults",
    "UnknownCircuit": "plumbnet.rules.circuit_rules",
    "UnknownExample": "plumbnet.library.example_call",
    "UnknownForm": "plumbnet.library.picture_form",
    "UnknownHeater": "plumbnet.library.heater_choice",
    "UnknownMethod": "plumbnet.library.method_choice",
    "UnknownProfile": "plumbnet.rules.rule_profile",
    "UnknownScenario": "plumbnet.study.whatif.what_if",
    "board": "plumbnet.library.board_call",
    "chart": "plumbnet.library.chart_picture",
    "check": "plumbnet.api",
    "compare": "plumbnet.library.comparison",
    "draw": "plumbnet.library.schematic_picture",
    "example": "plumbnet.library.example_call",
    "export_tables": "plumbnet.library.table_calls",
    "import_tables": "plumbnet.library.table_calls",
    "margins": "plumbnet.library.margins_call",
    "read": "plumbnet.api",
    "read_bytes": "plumbnet.api",
    "review": "plumbnet.library.review_call",
    "remedies": "plumbnet.study.remedies.remedy_search",
    "size": "plumbnet.library.heater_sheet",
    "sweep": "plumbnet.study.contingency.event_sweep",
    "trace": "plumbnet.library.heater_trace",
    "undo": "plumbnet.layout.edits.inverse",
    "warmup": "plumbnet.library.warmup_run",
    "whatif": "plumbnet.study.whatif.what_if",
    "with_changes": "plumbnet.layout.edits.apply",
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


show_with("Comparison", "text", "plumbnet.report.comparison.comparison_report", "comparison_text")
show_with("Margins", "text", "plumbnet.report.studies.margins_report", "margins_text")
show_with("Report", "dict", "plumbnet.library.report_answers", "report_dict")
show_with("Report", "frame", "plumbnet.library.data_frame", "heaters_frame")
show_with("Report", "html", "plumbnet.report.page.notebook_page", "report_html")
show_with("Report", "text", "plumbnet.library.report_answers", "full_text")
show_with("Sheet", "text", "plumbnet.report.sheets.sheet_report", "sheet_text")
show_with("Sweep", "text", "plumbnet.report.studies.sweep_report", "sweep_text")
show_with("System", "changed", "plumbnet.layout.edits.apply", "with_changes")
show_with("System", "html", "plumbnet.library.report_answers", "layout_html")
show_with("HeaterWarmup", "text", "plumbnet.report.warmup.warmup_report", "warmup_text")
show_with("WhatIf", "text", "plumbnet.report.studies.whatif_report", "whatif_text")
