"""Reports and outcomes for tests of the forms of output, some with hostile texts in every place that takes any."""

from collections.abc import Iterable
from dataclasses import replace

from conftest import system
from hypothesis import strategies as st

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.yaml.fault import Fault, LayoutError
from plumbnet.report.formats import json1
from plumbnet.report.output.writer import Fate, FileOutcome, Unread, Writer, unread
from plumbnet.rules.finding import Accepted, Finding, Severity
from plumbnet.study.remedies.checked_file import Checked
from plumbnet.study.remedies.remedy_search import remedies_if_small

CONTROL = ("\x1b", "\x07", "\u202e", "\x9b", "\x00", "\u200f", "\ud800")
HOSTILE = (
    *("=1+1", "@SUM(A1)", "+1", "-1", "\t=1", "\r=1", 'a,b"c\r\nd;=1'),
    *("</testcase>&<![CDATA[", "]]>", "\ufffe", *CONTROL),
    *("{0} {kind: main}", "[here](http://lantern.example/)", "\U0001f525 ½ °F", ""),
)
ANYTHING = st.one_of(st.sampled_from(HOSTILE), st.text(st.characters()))
"""Any text at all, lone surrogates and control characters among it."""
NAMED = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), min_size=1)
"""Names of files as an operating system may give them."""


def trapped(**parts: str) -> Report:
    """One closed heater with its relief valve and nothing else."""
    return plumbnet.check(
        system(
            "street -> cv -> heater -> tap.hot",
            **{"heater": "relief: {pressure: 150 psi, temperature: 210 degF}", **parts},
        )
    )


def fine() -> Report:
    """One open heater and no finding."""
    return plumbnet.check(
        system("street -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
    )


def warned() -> Report:
    """A heater that is controlled, and a warning about its tank."""
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    parts = {
        "heater": "relief: {pressure: 150 psi, temperature: 210 degF}",
        "tank": "precharge: 55 psi, volume: 10 gal",
    }
    return plumbnet.check(system(runs, **parts))


def renamed(report: Report, *, file: str | None = None, title: str | None = None) -> Report:
    """The report on a file of another name or title."""
    record = report.system.record if file is None else replace(report.system.record, file=file)
    found = replace(report.system, record=record, title=report.system.title if title is None else title)
    return replace(report, system=found)


def saying(report: Report, text: str) -> Report:
    """The report with that text in place of every sentence of its findings."""
    said = tuple(replace(one, text=text, advice=text, clause=text) for one in report.findings)
    return replace(report, findings=said)


def accepting(report: Report, reason: str, line: int = 20) -> Report:
    """The report with every finding accepted for that reason."""
    accepted = tuple(Accepted(one, reason, line) for one in report.findings)
    return replace(report, findings=(), accepted=accepted)


def refusal(file: str = "faulty.yaml", *texts: str) -> Unread:
    """A file with those mistakes, one in each line from the second on."""
    faults = [Fault(line, 3, text, width=4) for line, text in enumerate(texts or ("it is wrong",), start=2)]
    return unread(file, LayoutError(file, faults, "plumbnet: 1\n" + "  here\n" * len(faults)))


def missing(file: str = "none.yaml") -> Unread:
    """A file that does not exist."""
    return unread(file, FileNotFoundError(2, "No such file or directory", file))


def outcomes(writer: Writer, answers: Iterable[Report | Unread]) -> list[FileOutcome]:
    """What the writer makes of each."""
    return [_outcome(writer, one) for one in answers]


def written(writer: Writer, *answers: Report | Unread) -> str:
    """The whole document."""
    document, made = writer.document(), outcomes(writer, answers)
    return "".join([document.opening(), *map(document.add, made), document.closing()])


def as_json(*reports: Report) -> str:
    """Reports as the JSON document has them, remedies not looked for."""
    return json1.in_order({"reports": [json1.report_fields(one) for one in reports], "errors": [], "notes": []})


def _outcome(writer: Writer, one: Report | Unread) -> FileOutcome:
    if isinstance(one, Unread):
        return FileOutcome(one.file, Fate.NOT_UNDERSTOOD, writer.refused(one), words=one.words)
    verdicts = tuple(heater.verdict for heater in one.heaters)
    found = remedies_if_small(one) if writer.shows_remedies else None
    piece = writer.answered(Checked(one, found))
    return FileOutcome(one.system.record.file, Fate.CHECKED, piece, verdicts, one.findings, one.accepted)


def note() -> Finding:
    """A finding that is only a note, about a part that is no heater."""
    return Finding(
        "tank-note", Severity.NOTE, ("tank",), 0, "common practice", verified=False, text="So.", advice="No."
    )
