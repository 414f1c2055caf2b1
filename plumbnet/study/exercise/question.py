"""Sorts of question: what they ask of an analysed layout, and the register of them."""

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from random import Random

from plumbnet.analysis import Report
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.exercise.answer import Blank, Choice
from plumbnet.study.exercise.level import LEVELS, Recipe


@dataclass(frozen=True, slots=True)
class World:
    """A layout as it is to be judged: the report on it, and the level and chance of the exercise."""

    report: Report
    level: int
    chance: Random


@dataclass(frozen=True, slots=True)
class Asked:
    """A question put to one layout.

    `outcome` is what sort of answer it is, one of the question's outcomes; `because` the reason in a sentence or two.
    `heater` is the one it is about, None where it is about all. `profiles` are the rule profiles it compares.
    """

    prompt: str
    blanks: tuple[Blank, ...]
    outcome: str
    because: tuple[str, ...]
    heater: str | None = None
    profiles: tuple[str, ...] = ()

    @property
    def choice(self) -> Choice:
        """The first blank, which is a choice in every sort of question."""
        first = self.blanks[0]
        if not isinstance(first, Choice):
            raise TypeError("the first blank of a question is a choice")
        return first

    @property
    def answer(self) -> str:
        """The option of the first blank that is right."""
        return self.choice.right

    def narrowed(self, answers: Collection[str]) -> "Asked":
        """The question with no other options in its first blank, in their order."""
        options = tuple(option for option in self.choice.options if option in answers)
        return replace(self, blanks=(replace(self.choice, options=options), *self.blanks[1:]))


Ask = Callable[[World], Iterator[Asked]]


@dataclass(frozen=True, slots=True)
class Question:
    """A sort of question: for each level that has it the outcomes that there are, and how it is put."""

    name: str
    outcomes: Mapping[int, tuple[str, ...]]
    ask: Ask
    fewest: Mapping[int, int]
    """For each level how many answers one list of parts must have the makings of."""
    leans: Mapping[int, Mapping[str, float]]
    """For a level shares of its recipe under which lists oftener have those makings; of level 0 for every level."""
    as_it_is: bool
    """Asked only of layouts of which nothing is supposed."""
    is_narrowed: bool
    """Whether the first blank offers only what is right in some layout of the same list."""
    quick: Ask | None = None
    """Where an answer costs much beside its first blank: asks the same with the first blank alone worked out."""

    @property
    def about(self) -> str:
        """What it asks, in a sentence."""
        return (self.ask.__doc__ or "").partition("\n")[0]

    def recipe(self, level: int) -> Recipe:
        """The recipe of lists for this question at a level."""
        return replace(LEVELS[level].recipe, **{**self.leans.get(0, {}), **self.leans.get(level, {})})


REDUCER_CONVENTION = (
    "(A pressure reducer without a bypass counts as shut to water that would go back through it, even where it stands "
    "wide open: nobody can count on that.)"
)
QUESTIONS: dict[str, Question] = {}


def question(  # noqa: PLR0913  all that a sort of question is, said in one place
    name: str,
    outcomes: Mapping[int, tuple[str, ...]],
    *,
    fewest: Mapping[int, int],
    leans: Mapping[int, Mapping[str, float]] | None = None,
    as_it_is: bool = False,
    is_narrowed: bool = True,
    quick: Ask | None = None,
) -> Callable[[Ask], Ask]:
    """Register a function as the sort of question `name`."""

    def register(ask: Ask) -> Ask:
        QUESTIONS[name] = Question(name, outcomes, ask, fewest, leans or {}, as_it_is, is_narrowed, quick)
        return ask

    return register


def heaters(world: World) -> list[HeaterFacts]:
    """The heaters with water in them, in an order left to chance."""
    found = [heater for heater in world.report.heaters if heater.static_pa is not None]
    world.chance.shuffle(found)
    return found


def reducer_note(world: World) -> str:
    """The convention on reducers, a sentence behind the question, where the list has one."""
    has_reducer = any(part.kind == "pressure_reducer" for part in world.report.system.parts.values())
    return f" {REDUCER_CONVENTION}" if has_reducer else ""
