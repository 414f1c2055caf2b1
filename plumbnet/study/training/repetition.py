"""What was missed, and on which day it is asked again, in another house."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import chain
from typing import Final

from plumbnet.layout.units import Customary
from plumbnet.study.exercise import exercises
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.results_file import Held, Results

AFTER_DAYS: Final = (1, 4, 10)
"""Days after which it is asked again, counted from the day on which it was missed (spaced practice; from memory)."""
_SEEDS = 1_000
"""By so much seeds of exercises asked again lie apart from those they repeat."""
_DRAWN = 6
"""Exercises that are looked at for one in which the belief could be held again."""


@dataclass(frozen=True, slots=True)
class Due:
    """A sort of question that was missed, what was held in it, and how often it was asked again in a row.

    `missed` is the day of the last miss, `last` that of the last answer; `turns` tells its houses apart.
    """

    what: Held
    level: int
    units: Customary
    missed: date
    last: date
    asked: int = 0
    turns: int = 0

    @property
    def day(self) -> date | None:
        """The day on which it is due; None where it has been answered after the last of them.

        Who comes late is asked the next time as much later, as if that day had been the one.
        """
        if self.asked >= len(AFTER_DAYS):
            return None
        before = AFTER_DAYS[self.asked - 1] if self.asked else 0
        return self.last + timedelta(days=AFTER_DAYS[self.asked] - before)


def due_on(results: Results, day: date) -> tuple[Due, ...]:
    """What is due on a day, or has been for longer, in the order in which it was missed."""
    return tuple(one for one in _missed(results) if one.day is not None and one.day <= day)


def next_day(results: Results) -> date | None:
    """The next day on which something is due; None where nothing is."""
    return min((one.day for one in _missed(results) if one.day is not None), default=None)


def _missed(results: Results) -> Iterator[Due]:
    found: dict[tuple[str, str, int, str], Due] = {}
    for sitting, answer in results.answers:
        day = date.fromisoformat(sitting.day)
        what = answer.again or Held(question=answer.question, held=answer.first_held)
        key = (what.question, what.held, sitting.level, sitting.units)
        known = found.get(key)
        if not answer.is_right_at_once:
            turns = 0 if known is None else known.turns + 1
            found[key] = Due(what, sitting.level, sitting.units, day, day, turns=turns)
        elif known is not None and answer.again is not None:
            found[key] = _answered(known, day)
    yield from found.values()


def _answered(due: Due, day: date) -> Due:
    return Due(due.what, due.level, due.units, due.missed, day, due.asked + 1, due.turns + 1)


def asked_again(due: Due, *, seed: int) -> PosedExercise:
    """An exercise of that sort in another house, if one is near in which the same belief can be held.

    The same seed, question and turn give the same exercise. Raises NoMore, and KeyError for a question there is not.
    """
    start = _SEEDS * (due.turns + 1) + seed
    drawn = (_posed(due, start + number) for number in range(_DRAWN))
    first = next(drawn)
    return next((one for one in chain([first], drawn) if due.what.held in one.could_hold), first)


def _posed(due: Due, seed: int) -> PosedExercise:
    (drawn,) = exercises(seed, due.level, about=due.what.question, units=due.units)
    return PosedExercise(drawn, again=due.what)
