"""The JSON Schema of a file of questions, made from its declaration, for editors that complete and check."""

from pydantic import TypeAdapter

from plumbnet.layout.authoring import DIALECT
from plumbnet.study.beliefs import known_beliefs, known_misreadings
from plumbnet.study.exercise import QUESTIONS
from plumbnet.study.training.question_form import OwnOption, OwnQuestion, QuestionForm


def questions_schema() -> dict[str, object]:
    """The schema of a file of questions (JSON Schema 2020-12), with every sort of question and every belief by name."""
    made = TypeAdapter(QuestionForm).json_schema()
    properties = {name: made["$defs"][name]["properties"] for name in (OwnQuestion.__name__, OwnOption.__name__)}
    properties[OwnQuestion.__name__]["about"]["enum"] = sorted(QUESTIONS)
    properties[OwnOption.__name__]["held"]["anyOf"][0]["enum"] = [*known_beliefs(), *known_misreadings()]
    schema: dict[str, object] = {"$schema": DIALECT, **_tidied(made), "title": "plumbnet questions, form 1"}
    return schema


def _tidied(schema: dict[str, object]) -> dict[str, object]:
    """A schema through and through without the titles that its library gives."""
    return {key: _inside(one) for key, one in schema.items() if key != "title" or not isinstance(one, str)}


def _inside(value: object) -> object:
    if isinstance(value, dict):
        return _tidied(value)
    return [_inside(one) for one in value] if isinstance(value, list) else value
