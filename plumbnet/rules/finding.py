"""A finding as it stands in a report, with what is said of it by whoever accepts it."""

from dataclasses import dataclass
from enum import StrEnum

from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.ruling import is_certain


class Severity(StrEnum):
    """How bad a finding is; an error sets the exit status."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"

    @property
    def rank(self) -> int:
        """Sorts severities, the worst first."""
        return list(Severity).index(self)


@dataclass(frozen=True, slots=True)
class Finding:
    """A breach with everything that stands beside it in a report; `verified` says that its clause was read."""

    name: str
    severity: Severity
    parts: tuple[str, ...]
    line: int
    clause: str
    verified: bool
    text: str
    advice: str

    @property
    def is_certain(self) -> bool:
        """Whether nobody need look its clause up."""
        return is_certain(self.clause, verified=self.verified)


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that somebody accepts, why, and on which line of the inspector's list `file`, or of the layout."""

    finding: Finding
    reason: str
    line: int
    by: Acceptor = Acceptor.APPLICANT
    file: str = ""


@dataclass(frozen=True, slots=True)
class Claimed:
    """A finding that stands though somebody accepts it, and why; `is_refused` where that word can never silence it."""

    finding: Finding
    reason: str
    line: int
    why: str
    by: Acceptor = Acceptor.APPLICANT
    file: str = ""
    is_refused: bool = False
