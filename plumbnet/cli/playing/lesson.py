"""Which exercises are asked: dealt ones, a trainer's own, or what was missed; says what is wrong and exits."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date

import typer

from plumbnet.cli.arguments import fail, refuse
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.units import Customary
from plumbnet.layout.yaml import LayoutError, quoted, visible
from plumbnet.study.exercise import QUESTIONS, Exercise, NoMore, exercises
from plumbnet.study.training import (
    Dealt,
    Due,
    OwnQuestions,
    PosedExercise,
    Results,
    asked_again,
    due_on,
    lesson_names,
    next_day,
    questions_at,
    results_at,
    taking_turns,
)


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the command line asks for; `variants` None is one, or none beside the questions of a file."""

    seed: int = 1
    level: int = 1
    variants: int | None = None
    about: str | None = None
    units: Customary = "us"
    own: str | None = None


@dataclass(frozen=True, slots=True)
class Lesson:
    """What is asked, in turn. `dealt` gives the same again; None where it is what was missed, then from `because`."""

    posed: tuple[PosedExercise, ...]
    dealt: Dealt | None
    nothing: str = "Nothing is left that could be asked."
    """What is said where nothing is asked."""


def day_of(day: str | None) -> date:
    """The day that an option gives, else that of this machine; says what is wrong and exits."""
    if day is None:
        return date.today()  # noqa: DTZ011  the day where the apprentice sits
    try:
        return date.fromisoformat(day)
    except ValueError:
        fail(f"--day {quoted(day)} is no date; write it like 2026-03-14")


def lesson_of(wanted: Wanted) -> Lesson:
    """The exercises that are dealt, in turn with the questions of a file; says what is wrong with that and exits."""
    with mistakes_told(wanted.own):
        return read_lesson(wanted)


def read_lesson(wanted: Wanted) -> Lesson:
    """The same. Raises LayoutError and OSError for the file."""
    own = None if wanted.own is None else _questions(wanted.own)
    mixed = wanted.variants or (0 if own is not None else 1)
    dealt = _dealt(wanted, mixed) if mixed else ()
    record = Dealt(seed=wanted.seed, level=wanted.level, units=wanted.units, about=wanted.about)
    if own is not None:
        record = record.model_copy(update={"sha256": own.sha256, "mixed": mixed})
    return Lesson(taking_turns(() if own is None else own.posed, dealt), record)


def _dealt(wanted: Wanted, count: int) -> tuple[Exercise, ...]:
    try:
        with at_work("making exercises"):
            return exercises(wanted.seed, wanted.level, count, about=wanted.about, units=wanted.units)
    except NoMore as error:
        fail(f"{error}; ask for fewer, or take another seed")


def _questions(file: str) -> OwnQuestions:
    with at_work("reading"):
        return questions_at(file)


@contextmanager
def mistakes_told(file: str | None) -> Iterator[None]:
    """Say what is wrong with a file of questions, and exit, where that is raised."""
    try:
        yield
    except FileNotFoundError:
        if file is None:
            raise
        advice = "the command plumbnet lessons lists the lessons"
        fail(f"{quoted(file)}: no such file, and no such lesson", file, lesson_names(), advice)
    except (LayoutError, OSError) as error:
        refuse(str(file), error)


def lesson_again(file: str, seed: int, today: date) -> Lesson:
    """What was missed in a file of results and is due, in other houses."""
    results = results_of(file)
    due = due_on(results, today)
    if not due:
        return Lesson((), None, _nothing_due(results, today))
    askable = [one for one in due if _is_askable(one)]
    with at_work("making exercises"):
        posed = [(_again(one, seed), f"Missed on {one.missed.isoformat()}, asked again.") for one in askable]
    return Lesson(tuple(one.placed(number, words) for number, (one, words) in enumerate(posed, start=1)), None)


def results_of(file: str) -> Results:
    """The results in a file; says what is wrong and exits."""
    try:
        return results_at(file)
    except (LayoutError, OSError) as error:
        refuse(file, error)


def _is_askable(due: Due) -> bool:
    """Whether there is such a question; says on standard error where there is not."""
    question = QUESTIONS.get(due.what.question)
    if question is not None and due.level in question.outcomes:
        return True
    what = f"level {due.level} has no question {quoted(due.what.question)}"
    typer.echo(visible(f"What was missed on {due.missed.isoformat()} is not asked again: {what}."), err=True)
    return False


def _again(due: Due, seed: int) -> PosedExercise:
    try:
        return asked_again(due, seed=seed)
    except NoMore as error:
        fail(f"{error}; take another seed")


def _nothing_due(results: Results, today: date) -> str:
    following = next_day(results)
    if following is None:
        return "Nothing is left to be asked again."
    return f"Nothing is due on {today.isoformat()}; the next is on {following.isoformat()}."
