"""The JSON Schema of layouts, made when a test first asks for it."""

from functools import cache
from typing import Any

from jsonschema import Draft202012Validator

from plumbnet.layout.authoring.schema import layout_schema


@cache
def held() -> dict[str, Any]:
    """The schema."""
    return layout_schema()


@cache
def validator() -> Draft202012Validator:
    """What says whether a layout is valid by it."""
    return Draft202012Validator(held())
