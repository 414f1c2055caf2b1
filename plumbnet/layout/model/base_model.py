"""What everything has in common that an author declares field by field."""

import ast
import inspect
import re
from collections.abc import Iterator, Mapping
from functools import cache
from textwrap import dedent
from typing import ClassVar

from pydantic import BaseModel, ConfigDict, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

_UNIT_SUFFIX = re.compile(r"_(pa|k|m3|m|w|m3_s)$")


def file_name_of(field: str) -> str:
    """Name of a field in the file: the name in code without its unit.

    >>> file_name_of("coil_volume_m3")
    'coil_volume'
    """
    return _UNIT_SUFFIX.sub("", field)


class Declared(BaseModel):
    """Anything an author declares field by field: frozen, strict, no field that is not known.

    `called` is what a message calls it.
    """

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        strict=True,
        alias_generator=file_name_of,
        defer_build=True,  # of thirty kinds a layout has a few
    )
    called: ClassVar[str] = "this"

    @classmethod
    def __get_pydantic_json_schema__(cls, core: CoreSchema, handler: GetJsonSchemaHandler, /) -> JsonSchemaValue:
        """The schema with what the declaration says of each field as its description."""
        schema = handler(core)
        properties = handler.resolve_ref_schema(schema)["properties"]
        for field, said in said_of(cls).items():
            properties[cls.model_fields[field].alias]["description"] = said
        return schema


@cache
def said_of(declared: type[Declared]) -> Mapping[str, str]:
    """What a declaration says of its fields, by their names in code: the docstring behind each.

    It is read from the source when it is asked for, which most runs of the program never do; to have it read with
    every class that is made would take about a third of the program's own start.
    """
    said: dict[str, str | None] = {}
    for base in reversed(declared.__mro__):
        if issubclass(base, Declared):
            said.update(_own(base))
    return {field: words for field in declared.model_fields if (words := said.get(field))}


def _own(declared: type[Declared]) -> Iterator[tuple[str, str | None]]:
    """The fields that a class itself declares, each with its docstring."""
    (definition,) = ast.parse(dedent(inspect.getsource(declared))).body
    body = definition.body if isinstance(definition, ast.ClassDef) else []
    for statement, behind in zip(body, [*body[1:], None], strict=True):
        if isinstance(statement, ast.AnnAssign) and isinstance(statement.target, ast.Name):
            yield statement.target.id, _text(behind)


def _text(statement: ast.stmt | None) -> str | None:
    match statement:
        case ast.Expr(value=ast.Constant(value=str(words))):
            return inspect.cleandoc(words)
        case _:
            return None
