"""Who accepts what: findings and what applicant and inspector say to those that stand and those that are silenced."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from plumbnet.layout.model import Acceptance, System
from plumbnet.rules.accepting.own_acceptances import OwnAcceptances
from plumbnet.rules.acceptors import Acceptor, MayAccept
from plumbnet.rules.finding import Accepted, Claimed, Finding
from plumbnet.rules.requirement import REQUIREMENTS

Subject = tuple[str, tuple[str, ...]]
"""A finding's name and the parts that it is about, the first of them leading."""
NOT_LOOKED_AT: Final = "acceptances in the file do not count in this review"
LIST_DECIDES: Final = "the inspector's own list decides, and does not accept it"
NOT_BY_FILE: Final = "no file can accept this of itself"
BY_NOBODY: Final = "it is a danger to life, which nobody can accept"


@dataclass(frozen=True, slots=True)
class Word:
    """What somebody accepts, and the line on which that stands, in the layout or in the list of that name."""

    acceptance: Acceptance
    line: int
    by: Acceptor
    file: str = ""


@dataclass(frozen=True, slots=True)
class Said:
    """A word about a finding, and why it silences nothing: empty where it does."""

    word: Word
    why: str
    is_refused: bool = False


@dataclass(frozen=True, slots=True)
class Silencer:
    """The words that were said about a file, the inspector's before the applicant's.

    `applicant_counts_not` says why the applicant's word is not looked at; empty where it decides.
    """

    words: tuple[Word, ...] = ()
    applicant_counts_not: str = ""

    def said_of(self, subjects: Sequence[Subject]) -> tuple[Said | None, ...]:
        """What was said of each of the findings that stand together: the first word that silences it, or the first."""
        if not self.words:
            return (None,) * len(subjects)
        led = Counter((name, parts[0]) for name, parts in subjects)
        return tuple(self._said(subject, led) for subject in subjects)

    def unheard(self, subjects: Sequence[Subject]) -> tuple[Word, ...]:
        """Words about nothing that was found."""
        return tuple(word for word in self.words if not any(word.acceptance.is_about(*subject) for subject in subjects))

    def _said(self, subject: Subject, led: Counter[tuple[str, str]]) -> Said | None:
        said = [self._weighed(word, subject, led) for word in self.words if word.acceptance.is_about(*subject)]
        return next((one for one in said if not one.why), said[0] if said else None)

    def _weighed(self, word: Word, subject: Subject, led: Counter[tuple[str, str]]) -> Said:
        name, parts = subject
        may = REQUIREMENTS[name].may_accept
        if may is MayAccept.NOBODY:
            return Said(word, BY_NOBODY, is_refused=True)
        if word.by is Acceptor.APPLICANT and may is MayAccept.INSPECTOR:
            return Said(word, NOT_BY_FILE, is_refused=True)
        if word.by is Acceptor.APPLICANT and self.applicant_counts_not:
            return Said(word, self.applicant_counts_not)
        several = led[name, parts[0]]
        if several > 1 and not word.acceptance.parts:
            return Said(word, f"{several} such findings are led by {parts[0]}; name all parts of the one that is meant")
        return Said(word, "")


def silencer_of(system: System, own: OwnAcceptances | None) -> Silencer:
    """The words about a layout: those in it and, where the inspector decides, those of his list about its file."""
    placed = zip(system.accept, system.record.accept_at, strict=True)
    applicants = [Word(one, line, Acceptor.APPLICANT) for one, (line, _) in placed]
    if own is None:
        return Silencer(tuple(applicants))
    entries = zip(own.accept, own.lines, strict=True)
    inspectors = [
        Word(one, line, Acceptor.INSPECTOR, own.file) for one, line in entries if one.is_for(system.record.file)
    ]
    return Silencer((*inspectors, *applicants), LIST_DECIDES if own.file else NOT_LOOKED_AT)


@dataclass(frozen=True, slots=True)
class Silenced:
    """Findings that stand, those that are accepted, those that stand though somebody accepts them.

    `idle` are words about nothing that was found.
    """

    standing: tuple[Finding, ...]
    accepted: tuple[Accepted, ...] = ()
    claimed: tuple[Claimed, ...] = ()
    idle: tuple[Word, ...] = ()


def silenced(found: tuple[Finding, ...], silencer: Silencer) -> Silenced:
    """What stands of the findings, and what was said of them, in their order."""
    subjects = [(one.name, one.parts) for one in found]
    said = tuple(zip(found, silencer.said_of(subjects), strict=True))
    return Silenced(
        standing=tuple(finding for finding, one in said if one is None or one.why),
        accepted=tuple(_accepted(said)),
        claimed=tuple(_claimed(said)),
        idle=silencer.unheard(subjects),
    )


def _accepted(said: Sequence[tuple[Finding, Said | None]]) -> Iterator[Accepted]:
    for finding, one in said:
        if one is not None and not one.why:
            word = one.word
            yield Accepted(finding, word.acceptance.reason, word.line, word.by, word.file)


def _claimed(said: Sequence[tuple[Finding, Said | None]]) -> Iterator[Claimed]:
    for finding, one in said:
        if one is not None and one.why:
            word = one.word
            yield Claimed(finding, word.acceptance.reason, word.line, one.why, word.by, word.file, one.is_refused)
