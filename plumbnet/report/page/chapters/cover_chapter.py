"""The cover: what the job is, how the heaters stand, what must be done, and room for who signs."""

from collections.abc import Iterator

from plumbnet.analysis import Report
from plumbnet.report.page.chapters.verdicts_chapter import summary
from plumbnet.report.page.page_content import PageBlock
from plumbnet.report.prose import Heading, Paragraph, Points, Table, lists_in_short, names_in_short
from plumbnet.rules import Severity

_SIGNED = ("", "name", "licence", "date", "signature")
TO_WRITE_ON = "_" * 14
"""A line for a pen."""


def cover(report: Report, *, reviewer: str = "", date: str = "") -> Iterator[PageBlock]:
    """The blocks of the chapter."""
    job = report.system.job.said()
    if job:
        yield Table(("job", ""), job)
    yield from summary(report)
    yield Heading("What must be done", 3)
    done = tuple(to_be_done(report))
    yield Points(done) if done else Paragraph("Nothing: no error stands under these rules.")
    yield Heading("Signed", 3)
    yield _signatures(report, reviewer, date)


def to_be_done(report: Report) -> Iterator[str]:
    """What the errors that stand ask for, each once, with the parts it is asked of."""
    asked: dict[str, list[str]] = {}
    for one in report.findings:
        if one.severity is Severity.ERROR:
            asked.setdefault(lists_in_short(one.advice, report.system.parts), []).append(one.parts[0])
    for advice, parts in asked.items():
        yield f"{names_in_short(parts)}: {advice}"


def _signatures(report: Report, reviewer: str, date: str) -> Table:
    """Who signs, by name where that is known, with lines left empty."""
    job = report.system.job
    rows = (("drawn up by", job.author, "", job.date, ""), ("reviewed by", reviewer, "", date, ""))
    return Table(_SIGNED, tuple(tuple(cell or TO_WRITE_ON for cell in row) for row in rows))
