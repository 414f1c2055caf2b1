"""The JSON Schema of the file format, made from the declarations, for editors that complete and check."""

from pydantic import TypeAdapter

from plumbnet.discover import discover
from plumbnet.layout import kinds
from plumbnet.layout.document import Document, RunWithPipe
from plumbnet.layout.part import KINDS

discover(kinds)

DIALECT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, object]


def layout_schema() -> Schema:
    """The schema of a layout file (JSON Schema 2020-12): every kind with its own fields and their descriptions."""
    definitions: dict[str, object] = {}
    schema = _taken(TypeAdapter(Document).json_schema(), definitions)
    run = _taken(TypeAdapter(RunWithPipe).json_schema(), definitions)
    for name in sorted(KINDS):
        definitions[f"kind {name}"] = _kind(name, definitions)
    properties = dict(_mapping(schema["properties"]))
    properties["parts"] = {
        "type": "object",
        "description": "Every part by its name: a kind, or a mapping of a kind and its fields.",
        "minProperties": 1,
        "additionalProperties": {"$ref": "#/$defs/part"},
    }
    properties["runs"] = {
        "type": "array",
        "description": "Chains of parts joined by pipe: text, or a mapping with what is known of the pipe.",
        "items": {"anyOf": [{"type": "string", "pattern": "->", "examples": ["street -> meter -> heater"]}, run]},
    }
    definitions["part"] = _part()
    title = "plumbnet layout, format 1"
    return {"$schema": DIALECT, **schema, "title": title, "properties": properties, "$defs": definitions}


def _taken(schema: Schema, definitions: Schema) -> Schema:
    """A schema without its own definitions, which go to the common ones."""
    definitions.update(_mapping(schema.pop("$defs", {})))
    return schema


def _mapping(value: object) -> Schema:
    """A part of a schema that is known to be a mapping."""
    if not isinstance(value, dict):
        raise TypeError("the schema is not of the form that its library promises")
    return value


def _kind(name: str, definitions: Schema) -> Schema:
    """The schema of a part of one kind, its kind included."""
    schema = _taken(TypeAdapter(KINDS[name]).json_schema(), definitions)
    return {**schema, "properties": {"kind": {"const": name}, **_mapping(schema["properties"])}}


def _part() -> Schema:
    """A part: a bare kind that needs no field, or a mapping that its kind decides on."""
    names = sorted(KINDS)
    bare = [name for name in names if not any(field.is_required() for field in KINDS[name].model_fields.values())]
    choose = [
        {
            "if": {"properties": {"kind": {"const": name}}, "required": ["kind"]},
            "then": {"$ref": f"#/$defs/kind {name}"},
        }
        for name in names
    ]
    mapping = {
        "type": "object",
        "required": ["kind"],
        "properties": {"kind": {"enum": names, "description": "What sort of part it is."}},
        "allOf": choose,
    }
    return {"anyOf": [{"enum": bare, "description": "A bare word is the kind."}, mapping]}
