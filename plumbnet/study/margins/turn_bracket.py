"""Two values between which something turns, brought nearer to each other."""

import math
from dataclasses import dataclass, replace

NEAR = 0.4
"""How far beside a guess is tried, as a share of the step that is asked for: so that the turn is soon between two."""


@dataclass(frozen=True, slots=True)
class TurnBracket:
    """All is as before at `holds`, and not at `turns`; which of them is the greater does not matter."""

    holds: float
    turns: float

    @property
    def width(self) -> float:
        """How far they are from each other."""
        return abs(self.turns - self.holds)

    @property
    def middle(self) -> float:
        """The value midway."""
        return (self.holds + self.turns) / 2

    def has(self, value: float) -> bool:
        """Whether a value lies between them."""
        return min(self.holds, self.turns) < value < max(self.holds, self.turns)

    def narrowed(self, value: float, *, holds: bool) -> "TurnBracket":
        """With a value that was tried in place of the one that is like it."""
        return replace(self, holds=value) if holds else replace(self, turns=value)

    def beside(self, guess: float, step: float, *, towards_turn: bool) -> float:
        """A value a little on one side of where the turn is guessed to be; the middle where that lies outside."""
        little = math.copysign(NEAR * step, self.turns - self.holds)
        value = guess + little if towards_turn else guess - little
        return value if self.has(value) else self.middle
