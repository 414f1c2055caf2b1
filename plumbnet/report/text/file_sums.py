"""Sums over many files for people: how many were fine, how many heaters have which verdict, which findings stand."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from plumbnet.report.output import Fate, FileOutcome
from plumbnet.report.prose import Paint
from plumbnet.rules import Acceptor, Severity
from plumbnet.rules.facts import Verdict

NO_LAYOUT = "not looked at, as they have no key plumbnet"


@dataclass(slots=True)
class FileSums:
    """What has been counted so far."""

    files: Counter[Fate] = field(default_factory=Counter)
    troubled: Counter[Severity] = field(default_factory=Counter)
    """Files by the most severe of their findings."""
    verdicts: Counter[Verdict] = field(default_factory=Counter)
    findings: Counter[tuple[Severity, str]] = field(default_factory=Counter)
    holders: Counter[tuple[Severity, str]] = field(default_factory=Counter)
    """Files in which a finding stands."""
    accepted: Counter[tuple[Acceptor, str]] = field(default_factory=Counter)
    """Findings that are silenced, by whom."""
    hushed: int = 0
    """Files in which nothing stands, and something is silenced."""
    refused: list[str] = field(default_factory=list)
    """That files were not understood, where nothing else in the document says so."""
    notes: list[str] = field(default_factory=list)
    """What is to be known of files that are no layouts."""

    def add(self, outcome: FileOutcome) -> None:
        """Count one file."""
        found = [(one.severity, one.name) for one in outcome.findings]
        if outcome.fate is not None:
            self.files[outcome.fate] += 1
        self.refused += outcome.piece.records
        self.notes += outcome.piece.notes
        self.accepted.update((one.by, one.finding.name) for one in outcome.accepted)
        self.verdicts.update(outcome.verdicts)
        self.findings.update(found)
        self.holders.update(list(dict.fromkeys(found)))
        self.hushed += bool(outcome.accepted and not found)
        if found:
            self.troubled[min((severity for severity, _ in found), key=lambda one: one.rank)] += 1

    @property
    def is_of_many(self) -> bool:
        """Whether there is anything to sum."""
        return self.files.total() > 1 or bool(self.notes)

    def lines(self, paint: Paint) -> Iterator[str]:
        """The sums, verdicts from best to worst as declared, findings from the most severe and frequent down."""
        checked = self.files[Fate.CHECKED]
        told = ", ".join(self._files(paint))
        yield counted(self.files.total() - self.files[Fate.NO_LAYOUT], "file") + (f": {told}" if told else "")
        if self.files[Fate.NO_LAYOUT]:
            yield f"{counted(self.files[Fate.NO_LAYOUT], 'other YAML file')} {NO_LAYOUT}"
        if checked:
            yield f"{counted(self.verdicts.total(), 'heater')}: {', '.join(self._verdicts(paint)) or 'none'}"
        yield from self._findings(paint)
        for by in Acceptor:
            yield from self._accepted(by)
        yield from (f"  {paint('error', Severity.ERROR.value)}: {refused}" for refused in self.refused)
        yield from (f"  note: {note}" for note in self.notes)

    def _files(self, paint: Paint) -> Iterator[str]:
        for severity in Severity:
            if self.troubled[severity]:
                label = {Severity.ERROR: "an error", Severity.WARNING: "a warning at most"}.get(severity, "notes only")
                yield f"{self.troubled[severity]} with {paint(label, severity.value)}"
        if self.hushed:
            yield f"{self.hushed} with accepted findings only"
        clean = self.files[Fate.CHECKED] - self.troubled.total() - self.hushed
        if clean:
            yield f"{clean} without a finding"
        if self.files[Fate.NOT_UNDERSTOOD]:
            yield f"{self.files[Fate.NOT_UNDERSTOOD]} {paint('not understood', Severity.ERROR.value)}"

    def _verdicts(self, paint: Paint) -> Iterator[str]:
        for verdict in Verdict:
            if self.verdicts[verdict]:
                yield f"{self.verdicts[verdict]} {paint(verdict.value, verdict.value)}"

    def _findings(self, paint: Paint) -> Iterator[str]:
        ranked = sorted(self.findings.items(), key=lambda one: (one[0][0].rank, -one[1], one[0][1]))
        for (severity, name), count in ranked:
            held = self.holders[severity, name]
            places = f" in {counted(held, 'file')}" if held != count else ""
            yield f"  {count:>4} {paint(severity.value, severity.value)}: {name}{places}"

    def _accepted(self, by: Acceptor) -> Iterator[str]:
        own = sorted((name, count) for (acceptor, name), count in self.accepted.items() if acceptor is by)
        if own:
            names = ", ".join(name if count == 1 else f"{name} ({count} times)" for name, count in own)
            yield f"  {sum(count for _, count in own):>4} accepted by the {by.value}, each with its reason: {names}"


def counted(count: int, what: str) -> str:
    """So many of something.

    >>> counted(1, "file"), counted(2, "file")
    ('1 file', '2 files')
    """
    return f"{count} {what}{'' if count == 1 else 's'}"
