"""The JSON Schema of a file of questions: right in itself, and takes what the reader takes."""

from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from plumbnet.study.training.question_schema import questions_schema

SCHEMA: dict[str, Any] = questions_schema()
LESSONS = sorted((Path(__file__).parents[3] / "plumbnet" / "data" / "lessons").glob("*.yaml"))
ONE = {
    "plumbnet-questions": 1,
    "questions": [
        {
            "layout": "house.yaml",
            "about": "verdict",
            "options": {
                "open": "back",
                "tap": {"words": "out of a tap", "held": "somebody-opens-a-tap", "says": "No."},
            },
        }
    ],
}


def is_taken(document: object) -> bool:
    return bool(Draft202012Validator(SCHEMA).is_valid(document))


def test_it_is_a_schema_and_takes_the_lessons() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert "title" not in SCHEMA["$defs"]["OwnOption"]["properties"]["held"]
    assert SCHEMA["$defs"]["OwnOption"]["properties"]["held"]["description"].startswith("The belief")
    for lesson in LESSONS:
        assert is_taken(yaml.safe_load(lesson.read_text(encoding="utf-8"))), lesson


@pytest.mark.parametrize(
    ("field", "value", "takes"),
    [
        ("about", "verdict", True),
        ("about", "verdikt", False),
        ("scenario", None, True),
        ("options", {"open": "back", "shut": {"words": "no"}}, True),
        ("options", {"open": "back", "shut": {"held": "high-is-trapped"}}, False),
        ("options", {"open": "back", "shut": {"words": "no", "held": "high"}}, False),
        ("options", {"open": "back"}, False),
        ("optoins", {}, False),
    ],
)
def test_it_takes_what_the_reader_takes(field: str, value: object, *, takes: bool) -> None:
    document: dict[str, Any] = deepcopy(ONE)
    assert is_taken(document)
    document["questions"][0][field] = value
    assert is_taken(document) is takes
