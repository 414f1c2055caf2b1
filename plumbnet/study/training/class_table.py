"""The results of a class by belief: who held it, how often it could have been held, and how it went the last time."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from plumbnet.study.beliefs import known_beliefs, known_misreadings
from plumbnet.study.training.results_file import Results, TryGiven


@dataclass(frozen=True, slots=True)
class Holding:
    """One apprentice and one belief: in how many questions it could be held, was held, and was then put right.

    `last_day` is that of the last such question, on which it `holds_last` or not.
    """

    apprentice: str
    could: int
    held: int
    put_right: int
    last_day: str
    holds_last: bool


@dataclass(frozen=True, slots=True)
class BeliefRow:
    """A belief or misreading that somebody held, with all who met it, in the order of the files."""

    name: str
    holds: str
    is_belief: bool
    holdings: tuple[Holding, ...]

    @property
    def held_by(self) -> tuple[str, ...]:
        """Those who held it at least once."""
        return tuple(one.apprentice for one in self.holdings if one.held)


def class_rows(results: Mapping[str, Results]) -> tuple[BeliefRow, ...]:
    """A row for each belief that anybody held, beliefs first, those that most held before the others.

    `results` are by the name of the apprentice.
    """
    names = [*known_beliefs(), *known_misreadings()]
    held = {one for each in results.values() for _, answer in each.answers for one in _held(answer.tries)}
    names += sorted(held - set(names))
    rows = [_row(name, results) for name in names if name in held]
    return tuple(sorted(rows, key=lambda row: (not row.is_belief, -len(row.held_by))))


def _held(tries: Sequence[TryGiven]) -> list[str]:
    return [one.held for one in tries if one.held]


def _row(name: str, results: Mapping[str, Results]) -> BeliefRow:
    known = known_beliefs().get(name) or known_misreadings().get(name)
    met = [_holding(who, name, each) for who, each in results.items()]
    holds = name if known is None else known.holds
    return BeliefRow(name, holds, name in known_beliefs(), tuple(one for one in met if one.could or one.held))


def _holding(who: str, name: str, results: Results) -> Holding:
    met = [(one, answer) for one, answer in results.answers if name in {*answer.could, *_held(answer.tries)}]
    held = [answer for _, answer in met if name in _held(answer.tries)]
    last_day, holds_last = ("", False) if not met else (met[-1][0].day, name in _held(met[-1][1].tries))
    put_right = sum(answer.is_right for answer in held)
    return Holding(who, len(met), len(held), put_right, last_day, holds_last)
