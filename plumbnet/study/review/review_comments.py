"""Comments of a review: what is broken or cannot be told, in the order in which an applicant should read it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from plumbnet.rules import Accepted, Answered, AnswerWord, Severity


@dataclass(frozen=True, slots=True)
class Comment:
    """Something to put right or to tell, by the number under which a resubmission answers it."""

    number: int
    answered: Answered


def comments(answers: Sequence[Answered], accepted: Iterable[Accepted]) -> Iterator[Comment]:
    """What is broken and not accepted, the worst first, then what cannot be told; numbered, in file order."""
    silenced = {(one.finding.name, one.finding.parts) for one in accepted}
    open_ones = (one for one in answers if one.word is AnswerWord.UNTOLD or _stands(one, silenced))
    ordered = sorted(open_ones, key=lambda one: (_rank(one), one.line, one.rule.name, one.parts))
    yield from (Comment(number, one) for number, one in enumerate(ordered, start=1))


def _stands(one: Answered, silenced: set[tuple[str, tuple[str, ...]]]) -> bool:
    return one.finding is not None and (one.finding.name, one.finding.parts) not in silenced


def _rank(one: Answered) -> int:
    """Errors, warnings, notes, and behind them what cannot be told."""
    return len(Severity) if one.finding is None else one.finding.severity.rank
