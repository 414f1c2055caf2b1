"""What is said of an answer that is not the right one: two sentences, and the belief or misreading behind them."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from plumbnet.study.beliefs.belief_file import Belief, known_beliefs, known_misreadings


@dataclass(frozen=True, slots=True)
class Hint:
    """A belief or a misreading by name, what is held in it, and what is said to who answered so."""

    name: str
    holds: str
    text: str
    is_belief: bool


Cause: TypeAlias = tuple[float, Hint]
"""A number in SI, a pressure gauge, and what is said to who gave it."""


@dataclass(frozen=True, slots=True)
class ChoiceHints:
    """What is said of each option that is not the right one."""

    options: Mapping[str, Hint]


@dataclass(frozen=True, slots=True)
class MeasureHints:
    """What is said of a number in SI that is not the right one: by the cause it lies next to, else by its side."""

    right: float
    tolerance: float
    causes: tuple[Cause, ...]
    less: Hint
    more: Hint

    def of(self, value: float) -> Hint:
        """The hint of the nearest cause within the tolerance, or that of too little or too much."""
        near = [(abs(value - cause), hint) for cause, hint in self.causes if abs(value - cause) <= self.tolerance]
        if near:
            return min(near, key=lambda one: one[0])[1]
        return self.less if value < self.right else self.more


BlankHints: TypeAlias = ChoiceHints | MeasureHints


def told(name: str, words: Mapping[str, str]) -> Hint:
    """The hint of a name, its words filled in. Raises KeyError where there is none, or a word is missing."""
    one = _named(name)
    return told_as(name, f"{one.thought}; {one.meets}. {one.look}".format_map(words))


def told_as(name: str, text: str) -> Hint:
    """The hint of a name in somebody's own words. Raises KeyError where there is none."""
    return Hint(name, _named(name).holds, text, name in known_beliefs())


def _named(name: str) -> Belief:
    beliefs = known_beliefs()
    return beliefs[name] if name in beliefs else known_misreadings()[name]
