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
    yield from (Comment(number, one) for number, one in enumerate(sorted(open_ones, key=reading_order), start=1))


def reading_order(one: Answered) -> tuple[int, int, str, tuple[str, ...]]:
    """Sorts comments: errors, warnings, notes, and behind them what cannot be told; each in file order."""
    rank = len(Severity) if one.finding is None else one.finding.severity.rank
    return rank, one.line, one.rule.name, one.parts


def _stands(one: Answered, silenced: set[tuple[str, tuple[str, ...]]]) -> bool:
    return one.finding is not None and (one.finding.name, one.finding.parts) not in silenced
