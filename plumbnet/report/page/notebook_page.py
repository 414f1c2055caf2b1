"""A report or a system as a notebook shows it: verdicts, the piping drawn, findings; without a script."""

from collections.abc import Iterator

from plumbnet.analysis import Report
from plumbnet.layout.model import System
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.page.chapters import drawn, findings, summary
from plumbnet.report.page.html_page import to_fragment
from plumbnet.report.page.page_content import PageBlock
from plumbnet.report.prose import Paragraph
from plumbnet.report.text import CAUTION, counted
from plumbnet.study.dossier import Dossier


def report_html(report: Report) -> str:
    """The verdicts in a table, the piping, the findings."""
    return to_fragment(report.system.title or report.system.record.file, list(_report(report)))


def system_html(system: System, answer: Report | LayoutError) -> str:
    """How many parts and pipes there are, and the piping as its report has it; or why nothing can be computed of it."""
    return to_fragment(system.title or system.record.file, list(_system(system, answer)))


def _report(report: Report) -> Iterator[PageBlock]:
    dossier = Dossier(report, None, {}, (), {})
    yield from summary(report)
    yield drawn(report, "The piping")
    yield from findings(dossier)
    yield Paragraph(CAUTION)


def _system(system: System, answer: Report | LayoutError) -> Iterator[PageBlock]:
    heaters = sum(part.heat() is not None for part in system.parts.values())
    counts = [(len(system.parts), "part"), (len(system.pipes), "pipe"), (heaters, "heater")]
    yield Paragraph(", ".join(counted(count, word) for count, word in counts) + ".")
    if isinstance(answer, LayoutError):
        yield Paragraph("; ".join(fault.sentence for fault in answer.faults))
    else:
        yield drawn(answer, "The piping")
