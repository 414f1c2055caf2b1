"""Reports for people: one behind the other in full, or a line to a file; sums at the end where there are several."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

from plumbnet.layout.yaml import visible
from plumbnet.report.output import FileOutcome, FilePiece, Noted, Unread
from plumbnet.report.prose import Paint, plain, silenced_in_words
from plumbnet.report.text import heater_text as text
from plumbnet.report.text.file_sums import FileSums
from plumbnet.report.text.remedies_report import remedies_section
from plumbnet.rules import Finding
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.remedies import Checked


@dataclass(frozen=True, slots=True)
class TextWriter:
    """Every report in full, an empty line between them."""

    paint: Paint = plain
    is_for_people: bool = True
    shows_remedies: bool = True

    def answered(self, checked: Checked) -> FilePiece:
        """The report, with its remedies."""
        more = remedies_section(checked.report.facts, checked.remedies)
        return FilePiece(answers=(text.report_text(checked.report, paint=self.paint, more=more),))

    def refused(self, unread: Unread) -> FilePiece:
        """That it was not understood, for the sums; why is told beside the document."""
        return FilePiece(records=(visible(f"{unread.file}: not understood"),))

    def noted(self, noted: Noted) -> FilePiece:
        """Its lines, told behind the sums."""
        return FilePiece(notes=noted.lines)

    def document(self) -> "Summed":
        """The reports as they come, then the sums."""
        return Summed(self.paint, between="\n")


@dataclass(frozen=True, slots=True)
class LineWriter:
    """A line to a file: its worst verdicts and what was found."""

    paint: Paint = plain
    is_for_people: bool = True
    shows_remedies: bool = False

    def answered(self, checked: Checked) -> FilePiece:
        """One line."""
        report = checked.report
        heaters = _verdicts(report.heaters, self.paint)
        found_here = _findings(report.findings, self.paint)
        accepted = silenced_in_words(report.accepted)
        return FilePiece(
            answers=(f"{visible(checked.file)}: {'; '.join(filter(None, (heaters, found_here, accepted)))}\n",)
        )

    def refused(self, unread: Unread) -> FilePiece:
        """One line; why is told beside the document."""
        how = self.paint("not understood", "error")
        return FilePiece(answers=(f"{visible(unread.file)}: {how}\n",))

    def noted(self, noted: Noted) -> FilePiece:
        """Its lines, told behind the sums."""
        return FilePiece(notes=noted.lines)

    def document(self) -> "Summed":
        """The lines as they come, then the sums."""
        return Summed(self.paint, between="")


@dataclass(slots=True)
class Summed:
    """The answers, and behind an empty line the sums where there is more than one file."""

    paint: Paint
    between: str
    sums: FileSums = field(default_factory=FileSums)
    is_empty: bool = True

    def opening(self) -> str:
        """Nothing."""
        return ""

    def add(self, outcome: FileOutcome) -> str:
        """The answer for a file, apart from the one before."""
        self.sums.add(outcome)
        before = "" if self.is_empty else self.between
        self.is_empty &= not outcome.piece.answers
        return "".join(before + answer for answer in outcome.piece.answers)

    def closing(self) -> str:
        """The sums."""
        if not self.sums.is_of_many:
            return ""
        return ("" if self.is_empty else "\n") + "\n".join(self.sums.lines(self.paint)) + "\n"


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
