"""A report, or a layout, as it shows itself to whoever asks: what that takes is worked out here, then written."""

import json

from plumbnet.analysis.report import Report
from plumbnet.api import check
from plumbnet.layout.fault import LayoutError
from plumbnet.layout.system import System
from plumbnet.report import display, json1, text
from plumbnet.report.cures import section
from plumbnet.study.remedies import remedies_if_small


def report_dict(report: Report, *, remedies: bool = True) -> json1.Json:
    """A report as schema 1 has it, in SI units; with remedies where they are wanted and the layout is small."""
    fields = json1.report_fields(report, remedies_if_small(report) if remedies else None)
    plain: json1.Json = json.loads(json.dumps(fields))
    return plain


def full_text(report: Report) -> str:
    """A report in full, with remedies where the layout is small; ends with a line break."""
    return text.to_text(report, more=section(report.facts, remedies_if_small(report)))


def layout_html(system: System) -> str:
    """A layout as a notebook shows it: with the report on it, or why there is none."""
    answer: Report | LayoutError
    try:
        answer = check(system)
    except LayoutError as error:
        answer = error
    return display.system_html(system, answer)
