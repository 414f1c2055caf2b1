"""A seed and a level in, exercises out: outcomes are dealt first, then layouts drawn until the engine agrees."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count, islice
from random import Random
from typing import TypeVar

from plumbnet.api import check, read_bytes
from plumbnet.discover import discover
from plumbnet.layout.edits import with_changes
from plumbnet.layout.model import System
from plumbnet.layout.units import Customary
from plumbnet.layout.yaml import LayoutError
from plumbnet.study.exercise import questions as question_modules
from plumbnet.study.exercise.building import building
from plumbnet.study.exercise.exercise import Exercise, Origin, exercise
from plumbnet.study.exercise.layout_likeness import likeness
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, Asked, Question, World
from plumbnet.study.exercise.suppositions import Supposition, suppositions
from plumbnet.study.exercise.usual_sizes import USUAL

discover(question_modules)

MOST_TRIES = 2_000
"""Layouts drawn for one exercise before it is given up."""
_SUPPOSED = 0.5
"""Share of the layouts of which an event is supposed."""
_EVENTS = 3
"""Events tried on one layout."""

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
class _Wanted:
    """What is wanted of an exercise: where it comes from, the sort of question, and the outcome."""

    origin: Origin
    question: Question
    outcome: str


def _dealt(seed: int, level: int, about: str | None, units: Customary) -> Iterator[Exercise]:
    chance = Random(f"{seed} {level}")  # noqa: S311  a seed that gives the same exercises is the point
    sorts = [QUESTIONS[about]] if about else list(questions_of(level))
    deck = _shuffled(chance, sorts)
    outcomes = {one.name: _shuffled(chance, one.outcomes[level]) for one in sorts}
    seen: set[str] = set()
    for number in count(1):
        sort = next(deck)
        origin = Origin(seed, LEVELS[level], number, units)
        yield _found(_Wanted(origin, sort, next(outcomes[sort.name])), chance, seen)


def _shuffled(chance: Random, cards: Sequence[Card]) -> Iterator[Card]:
    """All cards in an order left to chance, again and again, so that each comes as often as any other."""
    while True:
        yield from chance.sample(cards, len(cards))


def _found(wanted: _Wanted, chance: Random, seen: set[str]) -> Exercise:
    """The first exercise unlike those seen of which the engine says what is wanted."""
    recipe = replace(wanted.origin.level.recipe, **wanted.question.leans.get(wanted.outcome, {}))
    for _ in range(MOST_TRIES):
        layout = building(recipe, chance, USUAL[wanted.origin.units])
        system = read_bytes(layout.encode())
        for supposed in _supposed(wanted.question, system, chance):
            asked = _asked(wanted, system, supposed, chance)
            if asked is not None and _is_new(system, supposed, seen):
                return exercise(wanted.origin, layout, supposed, wanted.question, asked)
    raise NoMore(f"no exercise of level {wanted.origin.level.number} is left that differs from those before it")


def _is_new(system: System, supposed: Supposition | None, seen: set[str]) -> bool:
    """Whether nothing like it was seen; it is then seen."""
    key = likeness(system, () if supposed is None else supposed.changes)
    known = key in seen
    seen.add(key)
    return not known


def _supposed(question: Question, system: System, chance: Random) -> Sequence[Supposition | None]:
    """What is supposed of a layout: nothing, or one event after another."""
    if question.as_it_is or chance.random() >= _SUPPOSED:
        return (None,)
    return chance.sample(list(suppositions(system)), _EVENTS)


def _asked(wanted: _Wanted, system: System, supposed: Supposition | None, chance: Random) -> Asked | None:
    """The question put to the layout with what is supposed of it, if its answer is the one that is wanted."""
    try:
        report = check(system if supposed is None else with_changes(system, supposed.changes))
    except LayoutError:  # nothing can be computed of it
        return None
    world = World(report, wanted.origin.level.number, chance)
    return next((asked for asked in wanted.question.ask(world) if asked.outcome == wanted.outcome), None)
