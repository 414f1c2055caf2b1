"""Blanks of an exercise and what is typed into them: taken in spite of slips, and judged."""

import difflib
import re
import string
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from plumbnet.layout.units import Dimension, QuantityError, Units, parse_measure, show

LETTERS = string.ascii_lowercase
"""Letters that stand before options."""
_ALIKE = 0.7
"""Likeness, from 0 to 1, from which a typed word is taken for an option."""
_CLEARLY = 0.02
"""By how much the likest option must be liker than the next."""
_LONGEST = 60
"""Letters of a typed answer that are looked at."""


@dataclass(frozen=True, slots=True)
class Judged:
    """What a typed answer was taken for, and whether that is right; `taken` is None where it is not understood.

    `value` is that of a quantity, in SI.
    """

    taken: str | None
    is_right: bool = False
    advice: str = ""
    value: float | None = None


@dataclass(frozen=True, slots=True)
class Choice:
    """A blank for one of several options; `meanings` explains those that want it."""

    prompt: str
    options: tuple[str, ...]
    right: str
    meanings: Mapping[str, str] = field(default_factory=dict)

    def answer(self, _units: Units) -> str:
        """The right answer, in words."""
        return self.right

    def judged(self, typed: str, _units: Units) -> Judged:
        """What was typed, as an option: its letter, its word, the beginning of it, or something much like it."""
        taken = typed if typed in self.options else self._taken(_folded(typed[:_LONGEST]))
        if taken is None:
            return Judged(None, advice=f"a letter from a to {LETTERS[len(self.options) - 1]} will do")
        return Judged(taken, taken == self.right)

    def _taken(self, word: str) -> str | None:
        options = {_folded(option): option for option in self.options}
        if word in options:
            return options[word]
        if len(word) == 1 and word in LETTERS[: len(self.options)]:
            return self.options[LETTERS.index(word)]
        begun = [option for folded, option in options.items() if word and folded.startswith(f"{word}-")]
        return begun[0] if len(begun) == 1 else _likest(word, options)


@dataclass(frozen=True, slots=True)
class Measure:
    """A blank for a quantity in SI, right within a tolerance; `right` is None where it is to stay empty."""

    prompt: str
    dimension: Dimension
    right: float | None
    tolerance: float

    def answer(self, units: Units) -> str:
        """The right answer, in words."""
        return "none" if self.right is None else show(self.right, self.dimension, units)

    def judged(self, typed: str, units: Units) -> Judged:
        """What was typed, as a quantity; a bare number counts in the units of the layout."""
        try:
            value = parse_measure(typed.strip(), self.dimension, units)
        except QuantityError as error:
            return Judged(None, advice=str(error))
        is_right = self.right is not None and abs(value - self.right) <= self.tolerance
        return Judged(show(value, self.dimension, units), is_right, value=value)


Blank: TypeAlias = Choice | Measure


def _folded(text: str) -> str:
    """A word as it is compared: small letters and digits, one dash for all between them.

    >>> _folded(" On demand "), _folded("heater/relief")
    ('on-demand', 'heater-relief')
    """
    return re.sub(r"[\W_]+", "-", text.casefold()).strip("-")


def _likest(word: str, options: Mapping[str, str]) -> str | None:
    """The option that is much like a word, and clearly liker than any other."""
    likeness = {option: difflib.SequenceMatcher(None, word, folded).ratio() for folded, option in options.items()}
    first, *others = sorted(likeness, key=lambda option: -likeness[option])
    second = likeness[others[0]] if others else 0.0
    return first if likeness[first] >= max(_ALIKE, second + _CLEARLY) else None
