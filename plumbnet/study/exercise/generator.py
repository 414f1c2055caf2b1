"""A seed and a level in, exercises out: lists that have the makings of every answer, and one of the answers dealt."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import count, islice
from random import Random
from typing import TypeVar

from plumbnet.api import read_bytes
from plumbnet.discover import discover
from plumbnet.layout.model import System
from plumbnet.layout.units import Customary
from plumbnet.study.exercise import questions as question_modules
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.exercise import Exercise, Origin, exercise
from plumbnet.study.exercise.family import Family, Twin
from plumbnet.study.exercise.layout_likeness import likeness
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, Question
from plumbnet.study.exercise.suppositions import Supposition, suppositions
from plumbnet.study.exercise.usual_sizes import USUAL

discover(question_modules)

MOST_TRIES = 400
"""Lists drawn for one exercise before it is given up."""
_SUPPOSED = 0.5
"""Share of the lists of which an event is supposed."""

Card = TypeVar("Card")


class NoMore(ValueError):
    """No further exercise was found that differs from those before it."""


def exercises(
    seed: int, level: int, variants: int = 1, *, about: str | None = None, units: Customary = "us"
) -> tuple[Exercise, ...]:
    """So many exercises of a level, no two alike but for names; the first ones are the same however many are wanted.

    `about` names the sort of question; left out, all that the level has come in turn. `units` are those of the
    layouts, whose sizes and pressures are what is usual where people build in them. Raises NoMore, and KeyError for a
    level or a question there is not.
    """
    return tuple(islice(_dealt(seed, level, about, units), variants))


def questions_of(level: int) -> tuple[Question, ...]:
    """The sorts of question that a level has, by name."""
    return tuple(QUESTIONS[name] for name in sorted(QUESTIONS) if level in QUESTIONS[name].outcomes)


@dataclass(frozen=True, slots=True)
class _Dealt:
    """What has been dealt: which answer is next, by question and number of answers; how often each sort was right."""

    decks: dict[tuple[str, int], Iterator[int]] = field(default_factory=dict)
    outcomes: Counter[str] = field(default_factory=Counter)
    seen: set[str] = field(default_factory=set)


def _dealt(seed: int, level: int, about: str | None, units: Customary) -> Iterator[Exercise]:
    chance = Random(f"{seed} {level} {units}")  # noqa: S311  a seed that gives the same exercises is the point
    sorts = _shuffled(chance, [QUESTIONS[about]] if about else list(questions_of(level)))
    dealt = _Dealt()
    for number in count(1):
        yield _found(Origin(seed, LEVELS[level], number, units), next(sorts), chance, dealt)


def _shuffled(chance: Random, cards: Sequence[Card]) -> Iterator[Card]:
    """All cards in an order left to chance, again and again, so that each comes as often as any other."""
    while True:
        yield from chance.sample(cards, len(cards))


def _found(origin: Origin, question: Question, chance: Random, dealt: _Dealt) -> Exercise:
    """The first exercise unlike those seen, of a list that has the makings of enough answers.

    The list, what is supposed of it, and the heater come first; the answer is dealt last, evenly among those found.
    """
    for _ in range(MOST_TRIES):
        stock = building(question.recipe(origin.level.number), chance, USUAL[origin.units])
        supposed = _supposed(question, read_bytes(stock.text(stock.stretches).encode()), chance)
        family = Family(stock, supposed, question, origin.level.number, chance)
        answers = family.answers()
        if answers is None:
            continue
        for twin in reversed(answers[_next(question, answers, chance, dealt)]):
            asked = family.in_full(twin)
            if asked is not None and _is_new(read_bytes(twin.layout.encode()), supposed, dealt.seen):
                dealt.outcomes[f"{question.name} {asked.outcome}"] += 1
                asked = asked.narrowed(answers) if question.is_narrowed else asked
                return exercise(origin, twin.layout, supposed, question, asked)
    raise NoMore(f"no exercise of level {origin.level.number} is left that differs from those before it")


def _next(question: Question, answers: Mapping[str, Sequence[Twin]], chance: Random, dealt: _Dealt) -> str:
    """Which of the answers of a list is dealt.

    Where every list offers the same options, one of those that came least often so far, since some are in few lists.
    Elsewhere each in its turn: to favour what is in few lists would let the options tell.
    """
    in_order = _in_order(answers)
    if question.is_narrowed:
        key = (question.name, len(answers))
        return in_order[next(dealt.decks.setdefault(key, _shuffled(chance, range(len(answers)))))]
    came = {answer: dealt.outcomes[f"{question.name} {answers[answer][0].asked.outcome}"] for answer in in_order}
    return chance.choice([answer for answer in in_order if came[answer] == min(came.values())])


def _in_order(answers: Mapping[str, Sequence[Twin]]) -> list[str]:
    """The answers by what sort they are, so that a deck deals each sort evenly, and then by name."""
    return sorted(answers, key=lambda answer: (answers[answer][0].asked.outcome, answer))


def _is_new(system: System, supposed: Supposition | None, seen: set[str]) -> bool:
    """Whether nothing like it was seen; it is then seen."""
    key = likeness(system, () if supposed is None else supposed.changes)
    known = key in seen
    seen.add(key)
    return not known


def _supposed(question: Question, system: System, chance: Random) -> Supposition | None:
    """What is supposed of a list: nothing, or an event."""
    if question.as_it_is or chance.random() >= _SUPPOSED:
        return None
    return chance.choice(list(suppositions(system)))
