"""Reports for people: one behind the other in full, or a line to a file; sums at the end where there are several."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from plumbnet.analysis.report import Report
from plumbnet.layout.fault import visible
from plumbnet.report import text
from plumbnet.report.cures import section
from plumbnet.report.sums import Sums
from plumbnet.report.table import Paint
from plumbnet.report.writer import Outcome, Piece, Unread
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.rules.finding import Finding
from plumbnet.study.remedies import remedies_if_small


@dataclass(frozen=True, slots=True)
class TextWriter:
    """Every report in full, an empty line between them."""

    paint: Paint = text.plain
    is_for_people: bool = True

    def answered(self, report: Report) -> Piece:
        """The report, with remedies where the layout is small."""
        return Piece(answers=(report_text(report, paint=self.paint),))

    def refused(self, unread: Unread) -> Piece:  # noqa: ARG002  every writer has it
        """Nothing: it is told beside the document."""
        return Piece()

    def document(self, outcomes: Iterable[Outcome]) -> Iterator[str]:
        """The reports as they come, then the sums."""
        yield from _summed(outcomes, self.paint, between="\n")


@dataclass(frozen=True, slots=True)
class LineWriter:
    """A line to a file: its worst verdicts and what was found."""

    paint: Paint = text.plain
    is_for_people: bool = True

    def answered(self, report: Report) -> Piece:
        """One line."""
        heaters = _verdicts(report.heaters, self.paint)
        found_here = _findings(report.findings, self.paint)
        accepted = f"{len(report.accepted)} accepted" if report.accepted else ""
        file = visible(report.system.record.file)
        return Piece(answers=(f"{file}: {'; '.join(filter(None, (heaters, found_here, accepted)))}\n",))

    def refused(self, unread: Unread) -> Piece:
        """One line; why is told beside the document."""
        how = self.paint("not understood", "error")
        return Piece(answers=(f"{visible(unread.file)}: {how}\n",))

    def document(self, outcomes: Iterable[Outcome]) -> Iterator[str]:
        """The lines as they come, then the sums."""
        yield from _summed(outcomes, self.paint, between="")


def report_text(report: Report, *, paint: Paint = text.plain) -> str:
    """A report in full, with remedies where the layout is small."""
    return text.to_text(report, paint=paint, more=section(report.facts, remedies_if_small(report)))


def _summed(outcomes: Iterable[Outcome], paint: Paint, *, between: str) -> Iterator[str]:
    """The answers, and behind an empty line the sums where there is more than one file."""
    sums, is_first = Sums(), True
    for outcome in outcomes:
        sums.add(outcome)
        for answer in outcome.piece.answers:
            yield answer if is_first else between + answer
            is_first = False
    if sums.is_of_many:
        yield ("" if is_first else "\n") + "\n".join(sums.lines(paint)) + "\n"


def _verdicts(heaters: Iterable[HeaterFacts], paint: Paint) -> str:
    counts = Counter(heater.verdict for heater in heaters)
    shown = [f"{counts[verdict]} {paint(verdict.value, verdict.value)}" for verdict in Verdict if counts[verdict]]
    return ", ".join(shown) or "no heater"


def _findings(findings: Iterable[Finding], paint: Paint) -> str:
    """Each finding once, with how often it stands where that is more than once."""
    counts = Counter((one.severity, one.name) for one in findings)
    return ", ".join(
        f"{paint(severity.value, severity.value)} {name}{f' ({count} times)' if count > 1 else ''}"
        for (severity, name), count in counts.items()
    )
