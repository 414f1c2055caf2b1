"""An exercise as it is posed to somebody: in whose words, in which place of a lesson, and what it asks again."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from plumbnet.study.beliefs import BlankHints, ChoiceHints, Hint, exercise_hints
from plumbnet.study.exercise import Choice, Exercise
from plumbnet.study.training.results_file import Held

_IN_ITS_WORDS = "Your answer"
"""Before options in words of their own, which would not go on with what begins a sentence for others."""


@dataclass(frozen=True, slots=True)
class PosedExercise:
    """An exercise; `wording` has for each option that is offered the words in which it is.

    `tied` has for some of them what is said of it, instead of what is read from it; for those that are none of its sort
    nothing can be read.
    """

    exercise: Exercise
    wording: Mapping[str, str] = field(default_factory=dict)
    tied: Mapping[str, Hint] = field(default_factory=dict)
    again: Held | None = None

    @property
    def worded(self) -> Exercise:
        """The exercise as it is read: its first blank in the words that are its own."""
        first, *others = self.exercise.asked.blanks
        if not self.wording or not isinstance(first, Choice):
            return self.exercise
        own = Choice(_IN_ITS_WORDS, tuple(self.wording.values()), self.wording[first.right])
        return replace(self.exercise, asked=replace(self.exercise.asked, blanks=(own, *others)))

    @property
    def hints(self) -> tuple[BlankHints, ...]:
        """What is said of each answer that is not the right one, by the options as they are read."""
        first, *others = exercise_hints(self.exercise)
        if not self.wording or not isinstance(first, ChoiceHints):
            return (first, *others)
        known = {**first.options, **self.tied}
        return (ChoiceHints({words: known[one] for one, words in self.wording.items() if one in known}), *others)

    @property
    def asked_for(self) -> frozenset[int]:
        """The blanks, counted from 1, that are not to stay empty."""
        blanks = enumerate(self.exercise.asked.blanks, start=1)
        return frozenset(number for number, blank in blanks if isinstance(blank, Choice) or blank.right is not None)

    @property
    def could_hold(self) -> tuple[str, ...]:
        """The beliefs and misreadings that stand behind its options, by name."""
        found = (hint.name for one in self.hints if isinstance(one, ChoiceHints) for hint in one.options.values())
        return tuple(dict.fromkeys(found))

    def placed(self, number: int, source: str) -> "PosedExercise":
        """The same in another place of a lesson, with a word on where it comes from."""
        origin = replace(self.exercise.origin, number=number, source=source)
        return replace(self, exercise=replace(self.exercise, origin=origin))


def taking_turns(own: Sequence[PosedExercise], dealt: Iterable[Exercise]) -> tuple[PosedExercise, ...]:
    """Questions of a trainer and dealt ones in turn, as long as there are both; numbered anew where there are both."""
    others = [PosedExercise(one) for one in dealt]
    if not own:
        return tuple(others)
    turns = [one for pair in zip(own, others, strict=False) for one in pair]
    rest = (*own[len(others) :], *others[len(own) :])
    return tuple(
        one.placed(number, one.exercise.origin.in_words) for number, one in enumerate((*turns, *rest), start=1)
    )
