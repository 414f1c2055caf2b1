"""What a requirement answers for a subject: met, broken, not applicable, or not to be told from the file."""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar, TypeAlias

from plumbnet.layout.units import Dimension


class AnswerWord(StrEnum):
    """The four answers, as a sheet and its data give them."""

    MET = "met"
    BROKEN = "broken"
    NOT_APPLICABLE = "not-applicable"
    UNTOLD = "cannot-be-told"


@dataclass(frozen=True, slots=True)
class Measured:
    """A value and the bound it is held to, both SI of one dimension; at most that bound, or at least."""

    value: float
    bound: float
    dimension: Dimension
    at_least: bool = False


@dataclass(frozen=True, slots=True)
class Met:
    """A subject does what is asked: by what was measured, or by what was found, in words."""

    word: ClassVar[AnswerWord] = AnswerWord.MET
    parts: tuple[str, ...]
    text: str = ""
    measured: Measured | None = None


@dataclass(frozen=True, slots=True)
class Breach:
    """A subject does not: the parts it is about, the first of them leading; what is found; what to do."""

    word: ClassVar[AnswerWord] = AnswerWord.BROKEN
    parts: tuple[str, ...]
    text: str
    advice: str
    measured: Measured | None = None


@dataclass(frozen=True, slots=True)
class NotApplicable:
    """What is asked does not bear on a subject, or on none of this layout where no part is named; `text` says why."""

    word: ClassVar[AnswerWord] = AnswerWord.NOT_APPLICABLE
    measured: ClassVar[Measured | None] = None
    parts: tuple[str, ...]
    text: str


@dataclass(frozen=True, slots=True)
class Untold:
    """The file does not say enough to tell; `text` names what it would have to say."""

    word: ClassVar[AnswerWord] = AnswerWord.UNTOLD
    measured: ClassVar[Measured | None] = None
    parts: tuple[str, ...]
    text: str


Answer: TypeAlias = Met | Breach | NotApplicable | Untold

NOT_ASKED = NotApplicable((), "the rules do not ask for it")
"""Of a requirement that a profile does not make."""

NO_WATER = "no water comes to it from any supply"
"""Why what stands at a subject is not held to anything."""
