"""A number to the nearest turn on one side: past the values at which it may come, and by bisection between them."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from plumbnet.layout.units import LENGTH, PRESSURE, TEMPERATURE, Dimension
from plumbnet.study.contingency import WorldAnswer
from plumbnet.study.margins.margin import Turning, UncertainNumber
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.turn_bracket import TurnBracket

STEPS: Final[Mapping[Dimension, float]] = {PRESSURE: 1_700.0, TEMPERATURE: 0.5, LENGTH: 0.1}
"""How near to each other the value that holds and the one that turns are sought: 0.25 psi, 1 degF, 4 in."""
VOLUME_STEP: Final = 0.01
"""The same of a volume, as a share of it."""
BEFORE_PA, BEHIND_PA = 50.0, 1_100.0
"""How far before and behind a pressure something is tried that turns there; behind it by what scales are rounded to."""
HALVINGS: Final = 40
MOST_GUESSED: Final = 8
"""Values of a bracket beside a guess, before what is left is halved."""


def step_of(number: UncertainNumber) -> float:
    """How near the two values of a turn are sought."""
    return STEPS.get(number.dimension, VOLUME_STEP * number.told)


@dataclass(frozen=True)
class TurningSearch:
    """The search for turns of one number; `events` are the values at which it may turn, ascending."""

    trials: MarginTrials
    number: UncertainNumber
    events: Sequence[float] = ()

    def below(self) -> Turning | None:
        """The nearest turn below what is told."""
        return self._towards(self.end(self.number.lowest))

    def above(self) -> Turning | None:
        """The nearest turn above what is told."""
        return self._towards(self.end(self.number.highest))

    def end(self, farthest: float) -> float:
        """The farthest value on that side that the part can have."""
        can, cannot = self.number.told, farthest
        if self.trials.can_be(self.number, farthest):
            return farthest
        for _ in range(HALVINGS):
            middle = (can + cannot) / 2
            can, cannot = (middle, cannot) if self.trials.can_be(self.number, middle) else (can, middle)
        return can

    def _towards(self, end: float) -> Turning | None:
        for before, behind in pairwise([self.number.told, *self._stops(end)]):
            if not self._holds(behind):
                return self._turning(before, behind, end)
        return None

    def _stops(self, end: float) -> list[float]:
        """Values to try on the way to the end, the nearest first: just behind each event, and the end."""
        told, sign = self.number.told, 1 if end > self.number.told else -1
        passed = [event + sign * BEHIND_PA for event in self.events[::sign]]
        return [*(one for one in passed if sign * told < sign * one < sign * end), end]

    def _turning(self, holds: float, turns: float, end: float) -> Turning:
        """The turn between two values, the one as before and the other not."""
        bracket, tried = TurnBracket(holds, turns), [holds, turns]
        event = turns - math.copysign(BEHIND_PA + BEFORE_PA, turns - holds)
        if turns != end and bracket.has(event) and self._guess(bracket, tried) is None:
            bracket = bracket.narrowed(event, holds=self._holds(event))
        step = step_of(self.number)
        while bracket.width > step:
            guess = self._guess(bracket, tried) if len(tried) < MOST_GUESSED else None
            towards_turn = tried[-1] == bracket.holds
            value = bracket.middle if guess is None else bracket.beside(guess, step, towards_turn=towards_turn)
            tried.append(value)
            bracket = bracket.narrowed(value, holds=self._holds(value))
        return self._told(bracket.holds, bracket.turns, end)

    def _guess(self, bracket: TurnBracket, tried: Sequence[float]) -> float | None:
        """Where a heater that turns comes to what holds it: on a line through the two values tried nearest to it.

        None where no heater tells.
        """
        before, after = self._answer(bracket.holds), self._answer(bracket.turns)
        turned = (
            one for one in before.spare_pa if one in after.verdicts and after.verdicts[one] != before.verdicts[one]
        )
        for heater in turned:
            known = [(self._answer(value).spare_pa.get(heater), value) for value in tried]
            points = sorted((abs(spare_pa), spare_pa, value) for spare_pa, value in known if spare_pa is not None)
            if len(points) > 1 and points[0][1] != points[1][1]:
                (_, near_pa, near), (_, far_pa, far) = points[:2]
                return near - near_pa * (far - near) / (far_pa - near_pa)
        return None

    def _told(self, holds: float, turns: float, end: float) -> Turning:
        before, after = self.trials.before, self._answer(turns)
        gone = () if after.refused else tuple(sorted(before.errors - after.errors))
        turns_back = turns != end and self.number.is_pressure and self._holds(end)
        return Turning(holds, turns, after.since(before), gone, turns_back)

    def _holds(self, value: float) -> bool:
        return self._answer(value) == self.trials.before

    def _answer(self, value: float) -> WorldAnswer:
        return self.trials.after({self.number: value}) or self.trials.before
