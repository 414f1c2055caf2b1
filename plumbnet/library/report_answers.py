"""A report, or a layout, as it shows itself to whoever asks: what that takes is worked out here, then written."""

import json

from plumbnet.analysis import Report
from plumbnet.api import check
from plumbnet.layout.model import System
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.formats import Json, report_fields
from plumbnet.report.page import system_html
from plumbnet.report.text import remedies_section, report_text
from plumbnet.study.remedies import remedies_if_small


def report_dict(report: Report, *, remedies: bool = True) -> Json:
    """A report as schema 1 has it, in SI units; with remedies where they are wanted and the layout is small."""
    fields = report_fields(report, remedies_if_small(report) if remedies else None)
    plain: Json = json.loads(json.dumps(fields))
    return plain


def full_text(report: Report) -> str:
    """A report in full, with remedies where the layout is small; ends with a line break."""
    return report_text(report, more=remedies_section(report.facts, remedies_if_small(report)))


def layout_html(system: System) -> str:
    """A layout as a notebook shows it: with the report on it, or why there is none."""
    answer: Report | LayoutError
    try:
        answer = check(system)
    except LayoutError as error:
        answer = error
    return system_html(system, answer)
