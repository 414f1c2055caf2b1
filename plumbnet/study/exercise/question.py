"""Sorts of question: what they ask of an analysed layout, and the register of them."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from random import Random

from plumbnet.analysis import Report
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.exercise.answer import Blank


@dataclass(frozen=True, slots=True)
class World:
    """A layout as it is to be judged: the report on it, and the level and chance of the exercise."""

    report: Report
    level: int
    chance: Random


@dataclass(frozen=True, slots=True)
class Asked:
    """A question put to one layout.

    `outcome` is the answer in the words that are kept in balance; `because` the reason in a sentence or two.
    `heater` is the one it is about, None where it is about all. `profiles` are the rule profiles it compares.
    """

    prompt: str
    blanks: tuple[Blank, ...]
    outcome: str
    because: tuple[str, ...]
    heater: str | None = None
    profiles: tuple[str, ...] = ()


Ask = Callable[[World], Iterator[Asked]]


@dataclass(frozen=True, slots=True)
class Question:
    """A sort of question: for each level that has it the outcomes to be dealt, and how it is put."""

    name: str
    outcomes: Mapping[int, tuple[str, ...]]
    ask: Ask
    leans: Mapping[str, Mapping[str, float]]
    """For an outcome the shares of a recipe under which it comes about oftener, so that it is sooner found."""
    as_it_is: bool
    """Asked only of layouts of which nothing is supposed."""

    @property
    def about(self) -> str:
        """What it asks, in a sentence."""
        return (self.ask.__doc__ or "").partition("\n")[0]


QUESTIONS: dict[str, Question] = {}


def question(
    name: str,
    outcomes: Mapping[int, tuple[str, ...]],
    *,
    leans: Mapping[str, Mapping[str, float]] | None = None,
    as_it_is: bool = False,
) -> Callable[[Ask], Ask]:
    """Register a function as the sort of question `name`."""

    def register(ask: Ask) -> Ask:
        QUESTIONS[name] = Question(name, outcomes, ask, leans or {}, as_it_is)
        return ask

    return register


def heaters(world: World) -> list[HeaterFacts]:
    """The heaters with water in them, in an order left to chance."""
    found = [heater for heater in world.report.heaters if heater.static_pa is not None]
    world.chance.shuffle(found)
    return found
