"""What every form of output has in common: one file's outcome as text that can be sent between processes."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final, Protocol

from plumbnet.layout.yaml import Fault, LayoutError, reason_of, visible
from plumbnet.report.output.program_failure import program_failed
from plumbnet.rules import Accepted, Finding
from plumbnet.rules.facts import Verdict
from plumbnet.study.remedies import Checked


class Fate(StrEnum):
    """What became of a file."""

    CHECKED = "checked"
    NOT_UNDERSTOOD = "not understood"
    NO_LAYOUT = "no layout"


@dataclass(frozen=True, slots=True)
class Unread:
    """A file that could not be understood: its mistakes, and the words for people, with line and caret.

    A file that could not be opened has one mistake, in line 0. `is_of_scenarios` says that the layout was checked,
    and that scenarios of it were not understood.
    """

    file: str
    faults: tuple[Fault, ...]
    words: str
    is_of_scenarios: bool = False


NOT_A_LAYOUT: Final = "not a layout"
RULE_PROFILE: Final = "rule profile"
LIST_OF_ACCEPTANCES: Final = "list of acceptances"
FILE_OF_QUESTIONS: Final = "file of questions"
FILE_OF_RESULTS: Final = "results of exercises"


@dataclass(frozen=True, slots=True)
class Noted:
    """What is to be known of a file that is no layout: what it is, and a sentence or several, each with its line.

    `sort` is one of the words above.
    """

    file: str
    sort: str
    faults: tuple[Fault, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """A line for people to each sentence."""
        return tuple(visible(f"{self._at(one)}: {self.sort}: {one.sentence}") for one in self.faults)

    def _at(self, one: Fault) -> str:
        return f"{self.file}:{one.line}" if one.line else self.file


def unread(file: str, error: Exception) -> Unread:
    """The file that an error kept from being understood, be it a failure of the program that nobody has foreseen."""
    if isinstance(error, LayoutError):
        return Unread(error.file, error.faults, str(error))
    fault = Fault(0, 0, reason_of(error)) if isinstance(error, OSError) else program_failed(error)
    return Unread(file, (fault,), visible(f"{file}: {fault.sentence}"))


@dataclass(frozen=True, slots=True)
class FilePiece:
    """What one file adds to a document, as finished text: answers, a record of it, what is wrong, what is noted."""

    answers: tuple[str, ...] = ()
    records: tuple[str, ...] = ()
    errors: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


def joined_piece(first: FilePiece, second: FilePiece) -> FilePiece:
    """Two pieces of one file as one."""
    return FilePiece(
        first.answers + second.answers,
        first.records + second.records,
        first.errors + second.errors,
        first.notes + second.notes,
    )


@dataclass(frozen=True, slots=True)
class FileOutcome:
    """What came of one file: what it adds to the document, and what is counted. Plain data, cheap to send.

    `accepted` are the findings that somebody accepts; `own_used` the lines of the inspector's list that were about
    something found; `words` tell people what was not understood. `fate` is None for a file that was not asked
    about, of which something is noted.
    """

    file: str
    fate: Fate | None
    piece: FilePiece = FilePiece()
    verdicts: tuple[Verdict, ...] = ()
    findings: tuple[Finding, ...] = ()
    accepted: tuple[Accepted, ...] = ()
    own_used: tuple[int, ...] = ()
    words: str = ""


class _Document(Protocol):
    """A document that grows by one file at a time; what each call gives is to be written at once, and is not kept."""

    def opening(self) -> str:
        """What stands before everything."""

    def add(self, outcome: FileOutcome) -> str:
        """What one more file adds."""

    def closing(self) -> str:
        """What stands behind everything."""


@dataclass(frozen=True, slots=True)
class Listing:
    """A document of answers one behind the other, between a head and a foot."""

    head: str
    foot: str = ""

    def opening(self) -> str:
        """The head."""
        return self.head

    def add(self, outcome: FileOutcome) -> str:
        """The answers of a file."""
        return "".join(outcome.piece.answers)

    def closing(self) -> str:
        """The foot."""
        return self.foot


class Writer(Protocol):
    """A form of output. Its pieces are made where a file is checked, in any process; the document in one, in order."""

    @property
    def is_for_people(self) -> bool:
        """Whether what is wrong with a file is told beside the document and not in it."""

    @property
    def shows_remedies(self) -> bool:
        """Whether remedies are to be looked for, because it shows them."""

    def answered(self, checked: Checked) -> FilePiece:
        """The piece of a file that was checked."""

    def refused(self, unread: Unread) -> FilePiece:
        """The piece of a file that could not be understood."""

    def noted(self, noted: Noted) -> FilePiece:
        """The piece of a file that is no layout."""

    def document(self) -> _Document:
        """A document in which nothing stands yet."""
