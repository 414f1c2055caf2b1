"""The form of a file of questions: what it says, before its layouts are looked at."""

import re
from typing import Annotated, Final, Literal

from pydantic import BeforeValidator, Field

from plumbnet.layout.file import DeclaredFile, read_declared
from plumbnet.layout.model import Declared, Mistake
from plumbnet.layout.yaml import YamlNode

QUESTIONS_KEY: Final = "plumbnet-questions"
"""The key at the top of a file that makes it one of questions."""
_KEY: Final = re.compile(rb"^plumbnet-questions\s*:", re.MULTILINE)


class OwnOption(Declared):
    """An option that is offered, in words of a trainer."""

    called = "an option"

    words: str = Field(examples=["nowhere, but somebody soon opens a tap"])
    """How it reads."""
    held: str | None = Field(default=None, examples=["somebody-opens-a-tap"])
    """The belief or misreading behind it, by its name; when left out the program reads it from the answer."""
    says: str | None = Field(default=None, examples=["You waited for a tap. Ask who draws water at night."])
    """What is said to who takes it; what the program says of the belief when left out."""


def _words_alone(given: object) -> object:
    return {"words": given} if isinstance(given, str) else given


_Option = Annotated[OwnOption, BeforeValidator(_words_alone, json_schema_input_type=str | OwnOption)]


class OwnQuestion(Declared):
    """One question of a trainer."""

    called = "a question"

    layout: str = Field(examples=["bakery.yaml"])
    """The layout, a file beside the one with the questions, or below; else one that comes with the program, by name."""
    about: str = Field(examples=["verdict"])
    """Which sort of question."""
    scenario: str | None = Field(default=None, examples=["stop-shut"])
    """A scenario of the layout that is supposed; none when left out."""
    heater: str | None = Field(default=None, examples=["heater"])
    """The heater it is about; the only one when left out."""
    prompt: str | None = Field(default=None, examples=["The shop is closed, and the heater fires. Where does it go?"])
    """The question in words of your own; those of its sort when left out."""
    options: Annotated[dict[str, _Option], Field(min_length=2)] | None = Field(
        default=None, examples=[{"open": "back to the street", "trapped": "nowhere"}]
    )
    """The options that are offered, each with words of your own; all of its sort when left out.

    One that says what is held in it need be no answer to the question.
    """


class QuestionForm(Declared):
    """The whole file."""

    called = "a file of questions"

    version: Literal[1] = Field(alias=QUESTIONS_KEY, examples=[1])
    """Version of the form."""
    title: str = ""
    """What they are for."""
    note: str = ""
    """What is learned from them, in a line."""
    minutes: Annotated[int, Field(ge=1)] | None = Field(default=None, examples=[15])
    """How long they take."""
    questions: Annotated[tuple[OwnQuestion, ...], Field(strict=False, min_length=1)] = Field(
        examples=[[{"layout": "bakery.yaml", "about": "verdict"}]]
    )
    """The questions, in their order."""


def holds_questions(data: bytes) -> bool:
    """Whether the bytes of a file are meant for a file of questions: its key stands at the top."""
    return _KEY.search(data) is not None


def declared_questions(data: bytes, path: str) -> DeclaredFile[QuestionForm]:
    """A file as it stands; its layouts are unread. Raises LayoutError with every fault."""
    return read_declared(data, QuestionForm, file=path, unlike=_unlike_questions)


def _unlike_questions(root: YamlNode) -> Mistake | None:
    if isinstance(root.value, dict):
        return None
    return Mistake((), f"{QuestionForm.called} is a mapping", f"begin it with {QUESTIONS_KEY}: 1")
