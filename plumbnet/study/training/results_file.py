"""The file that keeps what an apprentice answered: sittings, and in each the answers with what was held in them."""

from collections.abc import Iterator
from datetime import date
from typing import Annotated, Final, Literal

import yaml
from pydantic import AfterValidator, Field

from plumbnet.layout.file import read_declared
from plumbnet.layout.model import Declared, Mistake
from plumbnet.layout.units import Customary
from plumbnet.layout.yaml import YamlNode, bytes_of, quoted

RESULTS_KEY: Final = "plumbnet-results"
"""The key at the top of a file that makes it such a file."""
_WIDTH = 120
_HEAD = "# What was answered to exercises, written by plumbnet exercise --play; plumbnet class reads it.\n"


def _dated(day: str) -> str:
    """The day as it is. Raises ValueError where it is no date."""
    try:
        return date.fromisoformat(day).isoformat()
    except ValueError as error:
        raise ValueError(f"{quoted(day)} is no date; write it like 2026-03-14") from error


Day = Annotated[str, AfterValidator(_dated)]
Counted = Annotated[int, Field(ge=1)]


class Held(Declared):
    """What is asked again: a sort of question, and the belief or misreading that was held in the answer."""

    called = "what is asked again"

    question: str
    """The sort of question."""
    held: str
    """The belief or misreading by name; empty where no answer was understood."""


class TryGiven(Declared):
    """An answer that was given."""

    called = "a try"

    given: str
    """The answer, in words."""
    held: str | None = None
    """The belief or misreading behind it, by name; None where it is right."""


class AnswerGiven(Declared):
    """What was answered to one blank of an exercise."""

    called = "an answer"

    exercise: Counted = Field(examples=[1])
    """Number of the exercise in its sitting."""
    blank: Counted = Field(examples=[1])
    """Number of the blank in the exercise."""
    question: str = Field(examples=["verdict"])
    """The sort of question."""
    right: str = Field(examples=["trapped"])
    """The right answer, in words."""
    tries: Annotated[tuple[TryGiven, ...], Field(strict=False)] = Field(examples=[[{"given": "trapped"}]])
    """What was tried, in turn; none where nothing was understood."""
    hops: Annotated[int, Field(ge=0)] = 0
    """Hops of the water that were followed before it."""
    could: Annotated[tuple[str, ...], Field(strict=False)] = ()
    """Beliefs and misreadings that stood behind the other options, by name."""
    again: Held | None = None
    """What it asks again; None where it is asked for the first time."""

    @property
    def is_right_at_once(self) -> bool:
        """Whether the first try is right."""
        return bool(self.tries) and self.tries[0].held is None

    @property
    def is_right(self) -> bool:
        """Whether the last try is right."""
        return bool(self.tries) and self.tries[-1].held is None

    @property
    def is_done(self) -> bool:
        """Whether it was not left after one try that is not right."""
        return self.is_right or len(self.tries) != 1

    def is_left_at(self, other: "AnswerGiven") -> bool:
        """Whether it is to the same blank, asked as that is, and was left after one try."""
        mine, others = ((one.exercise, one.blank, one.again) for one in (self, other))
        return not self.is_done and mine == others

    @property
    def first_held(self) -> str:
        """What was held at the first try; empty where it is right, or nothing was understood."""
        return (self.tries[0].held or "") if self.tries else ""


class Dealt(Declared):
    """What gives the exercises of a sitting again: the words of the command that dealt them."""

    called = "what was dealt"

    seed: int = 1
    """Seed of the exercises."""
    level: Annotated[int, Field(ge=1)] = 1
    """Their level."""
    units: Customary = "us"
    """Units of the layouts."""
    about: str | None = None
    """The one sort of question; None where all come in turn."""
    sha256: str | None = None
    """SHA-256 of the file of questions that they come from; None where none do."""
    mixed: Annotated[int, Field(ge=0)] = 0
    """How many dealt ones those of the file were mixed with."""


class Sitting(Declared):
    """Exercises answered on one day."""

    called = "a sitting"

    day: Day = Field(examples=["2026-03-14"])
    """The day on which it began."""
    dealt: Dealt | None = None
    """What was dealt; None where it asks again what was missed."""
    level: Annotated[int, Field(ge=1)] = 1
    """The level of its exercises."""
    units: Customary = "us"
    """The units of its layouts."""
    answers: Annotated[tuple[AnswerGiven, ...], Field(strict=False)] = ()
    """What was answered, in turn."""


class Results(Declared):
    """The whole file."""

    called = "a results file"

    version: Literal[1] = Field(default=1, alias=RESULTS_KEY, examples=[1])
    """Version of the form."""
    name: str = ""
    """Who answered; empty where nobody said so."""
    sittings: Annotated[tuple[Sitting, ...], Field(strict=False)] = ()
    """The sittings, the earliest first."""

    @property
    def answers(self) -> Iterator[tuple[Sitting, AnswerGiven]]:
        """Every answer with its sitting, in turn."""
        return ((sitting, answer) for sitting in self.sittings for answer in sitting.answers)


def results_at(path: str) -> Results:
    """The results that a file holds. Raises LayoutError with every fault of it, OSError."""
    return read_results(bytes_of(path), file=path)


def read_results(data: bytes, *, file: str) -> Results:
    """The results that the bytes of a file hold. Raises LayoutError with every fault, as a layout does."""
    return read_declared(data, Results, file=file, unlike=_unlike_results).form


def _unlike_results(root: YamlNode) -> Mistake | None:
    if isinstance(root.value, dict) and RESULTS_KEY in root.value:
        return None
    text = f"{Results.called} has the key {quoted(RESULTS_KEY)} at its top"
    return Mistake((), text, "plumbnet exercise --play --results FILE writes one")


def results_text(results: Results) -> str:
    """The file as it is written; the same text for the same results."""
    fields = {RESULTS_KEY: results.version, **results.model_dump(by_alias=True, exclude_defaults=True, mode="json")}
    dumped: str = yaml.safe_dump(fields, sort_keys=False, allow_unicode=True, width=_WIDTH)
    return _HEAD + dumped


def with_answer(results: Results, sitting: Sitting, answer: AnswerGiven) -> Results:
    """The results with one answer more, in the last sitting if that is of the same kind and day, else in a new one.

    One to a blank that was left after a try goes on with that: on whatever day, if the same can be dealt again.
    """
    *before, last = results.sittings or (sitting,)
    *given, left = last.answers or (answer,)
    is_same = last.dealt == sitting.dealt and (sitting.dealt is not None or last.day == sitting.day)
    if is_same and last.answers and left.is_left_at(answer):
        joined = answer.model_copy(update={"tries": (*left.tries, *answer.tries), "hops": left.hops + answer.hops})
        return _with_last(results, before, last, (*given, joined))
    if (last.day, last.dealt, last.level, last.units) != (sitting.day, sitting.dealt, sitting.level, sitting.units):
        before, last = [*before, last], sitting
    return _with_last(results, before, last, (*last.answers, answer))


def _with_last(results: Results, before: list[Sitting], last: Sitting, answers: tuple[AnswerGiven, ...]) -> Results:
    grown = last.model_copy(update={"answers": answers})
    return results.model_copy(update={"sittings": (*before, grown)})
