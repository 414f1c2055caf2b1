"""What every form of output has in common: one file's outcome as text that can be sent between processes."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol

from plumbnet.analysis.report import Report
from plumbnet.layout.fault import Fault, LayoutError, reason_of, visible
from plumbnet.rules.facts import Verdict
from plumbnet.rules.finding import Finding


class Fate(StrEnum):
    """What became of a file."""

    CHECKED = "checked"
    NOT_UNDERSTOOD = "not understood"
    NO_LAYOUT = "no layout"


@dataclass(frozen=True, slots=True)
class Unread:
    """A file that could not be understood: its mistakes, and the words for people, with line and caret.

    A file that could not be opened has one mistake, in line 0.
    """

    file: str
    faults: tuple[Fault, ...]
    words: str


def unread(file: str, error: LayoutError | OSError) -> Unread:
    """The file that an error kept from being understood."""
    if isinstance(error, LayoutError):
        return Unread(error.file, error.faults, str(error))
    fault = Fault(0, 0, reason_of(error))
    return Unread(file, (fault,), visible(f"{file}: {fault.text}"))


@dataclass(frozen=True, slots=True)
class Piece:
    """What one file adds to a document, as finished text: its answers, a record of the file, what is wrong with it."""

    answers: tuple[str, ...] = ()
    records: tuple[str, ...] = ()
    errors: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of one file: what it adds to the document, and what is counted. Plain data, cheap to send.

    `accepted` counts the findings that the file accepts; `words` tell people why it was not understood.
    """

    file: str
    fate: Fate
    piece: Piece = Piece()
    verdicts: tuple[Verdict, ...] = ()
    findings: tuple[Finding, ...] = ()
    accepted: int = 0
    words: str = ""


class Writer(Protocol):
    """A form of output. Its pieces are made where a file is checked, in any process; the document in one, in order."""

    @property
    def is_for_people(self) -> bool:
        """Whether what is wrong with a file is told beside the document and not in it."""

    def answered(self, report: Report) -> Piece:
        """The piece of a file that was checked."""

    def refused(self, unread: Unread) -> Piece:
        """The piece of a file that could not be understood."""

    def document(self, outcomes: Iterable[Outcome]) -> Iterator[str]:
        """The document in pieces, each written before the next outcome is asked for."""
