"""The JSON Schema of the file format, made from the declarations, for editors that complete and check."""

from collections.abc import Iterable
from typing import Annotated

from pydantic import TypeAdapter

from plumbnet.discover import discover
from plumbnet.layout.authoring.assembly_schema import assembly, changes, fields_of, instance, run_of_many, with_times
from plumbnet.layout.file import Document, RunWithPipe
from plumbnet.layout.model import KINDS, Add, Insert, SetValues, kinds
from plumbnet.layout.units import DIMENSIONS, Dimension, Quantity

discover(kinds)

DIALECT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, object]

_DATA = frozenset({"const", "default", "enum", "examples"})
_NO_NAME = "./>"  # what no name of a part can hold, for it would end the name in a run


def layout_schema() -> Schema:
    """The schema of a layout file (JSON Schema 2020-12): every kind with its own fields and their descriptions."""
    definitions: Schema = {}
    schema = _taken(TypeAdapter(Document).json_schema(), definitions)
    run = _taken(TypeAdapter(RunWithPipe).json_schema(), definitions)
    for name in sorted(KINDS):
        definitions[f"kind {name}"] = _kind(name, definitions)
    properties = dict(_mapping(schema["properties"]))
    properties["parts"] = {
        "type": "object",
        "description": "Every part by its name: a kind, or a mapping of a kind and its fields.",
        "minProperties": 1,
        "propertyNames": {"pattern": rf"^[^\s{_NO_NAME}-]([^{_NO_NAME}]*[^\s{_NO_NAME}-])?$", "maxLength": 60},
        "additionalProperties": {"$ref": "#/$defs/part"},
    }
    path = {"type": "string", "pattern": "->", "examples": ["street -> meter -> heater"]}
    properties["runs"] = {
        "type": "array",
        "description": "Chains of parts joined by pipe: text, or a mapping with what is known of the pipe.",
        "items": {"if": {"type": "string"}, "then": path, "else": run_of_many(run, definitions)},
    }
    _add_assemblies(properties, definitions)
    _open_up_changes(definitions)
    definitions["changes of the building"] = changes(_mapping(definitions["Change"]))
    _ask_for_part_or_parts(definitions)
    tidy = _Tidy()
    whole = {
        "$schema": DIALECT,
        **schema,
        "properties": tidy.tidied(properties),
        "$defs": {**_mapping(tidy.tidied(definitions)), **tidy.quantities()},
    }
    return {**whole, "title": "plumbnet layout, format 1"}


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
    kind = {"const": name, "description": "What sort of part it is."}
    schema.pop("required", None)  # asked for where the part stands
    return {**schema, "properties": {"kind": kind, **_mapping(schema["properties"])}}


def _add_assemblies(properties: Schema, definitions: Schema) -> None:
    """Instances beside parts, parts that stand for many, assemblies and where the building differs from them."""
    of_kinds = [_mapping(definitions[f"kind {name}"]) for name in sorted(KINDS)]
    for name, one in zip(sorted(KINDS), of_kinds, strict=True):
        definitions[f"many of {name}"] = with_times(one, definitions)
    fields = fields_of(of_kinds)
    definitions["instance"] = instance(fields["elevation"], fields, definitions)
    definitions["part"] = _part(inside=False)
    definitions["part of an assembly"] = _part(inside=True)
    definitions["assembly"] = assembly(_mapping(properties["parts"]), _mapping(properties["runs"]))
    properties["assemblies"] = {
        "type": "object",
        "description": "Groups of parts and runs that the layout has many times, by name.",
        "additionalProperties": {"$ref": "#/$defs/assembly"},
    }
    properties["change"] = {"$ref": "#/$defs/changes of the building"}


def _part(*, inside: bool) -> Schema:
    """A part: a bare kind that needs no field, a mapping that its kind decides on, or an instance of an assembly.

    Inside an assembly what a kind requires may be left to `each`.
    """
    bare = [name for name in sorted(KINDS) if inside or not _required(name)]
    mapping = {
        "type": "object",
        "required": ["kind"],
        "properties": {"kind": _any_kind()},
        "allOf": [_where_kind_is(name, _one_or_many(name, inside=inside)) for name in sorted(KINDS)],
    }
    bare_or_mapping = {"anyOf": [{"enum": bare, "description": "A bare word is the kind."}, mapping]}
    is_instance = {"type": "object", "required": ["use"]}
    return {"if": is_instance, "then": {"$ref": "#/$defs/instance"}, "else": bare_or_mapping}


def _one_or_many(name: str, *, inside: bool) -> Schema:
    many = {"$ref": f"#/$defs/many of {name}"}
    chosen: Schema = {"if": {"required": ["times"]}, "then": many, "else": {"$ref": f"#/$defs/kind {name}"}}
    return chosen if inside else {**chosen, "required": _required(name)}


def _required(name: str) -> list[str]:
    """The fields that a kind requires, by their names in the file."""
    return [info.alias or field for field, info in KINDS[name].model_fields.items() if info.is_required()]


def _any_kind() -> Schema:
    return {"enum": sorted(KINDS), "description": "What sort of part it is; plumbnet kinds lists them all."}


def _where_kind_is(name: str, then: Schema) -> Schema:
    return {"if": {"properties": {"kind": {"const": name}}, "required": ["kind"]}, "then": then}


def _open_up_changes(definitions: Schema) -> None:
    """The changes with what their library cannot know: exactly one action, and the fields of every kind.

    A change of many parts may give each another value.
    """
    definitions["Change"] = {**_mapping(definitions["Change"]), "minProperties": 1, "maxProperties": 1}
    for action in _mapping(_mapping(definitions["Change"])["properties"]).values():
        _mapping(action).pop("default", None)
        choices = _mapping(action).get("anyOf")
        if isinstance(choices, list):
            choices[:] = [choice for choice in choices if choice != {"type": "null"}]
    fields = {name: _mapping(_mapping(definitions[f"kind {name}"])["properties"]) for name in sorted(KINDS)}
    for name, known in fields.items():
        differing = {
            field: {"$ref": f"#/$defs/many of {name}/properties/{field}"} for field in known if field != "kind"
        }
        definitions[f"fields of {name}"] = {"properties": differing, "required": _required(name)}
    for model in (Insert, Add):
        own = _mapping(definitions[model.__name__])
        properties = {**_mapping(own["properties"]), "kind": _any_kind()}
        choose = [
            _where_kind_is(name, {"allOf": [{"$ref": f"#/$defs/fields of {name}"}, _only([*properties, *known])]})
            for name, known in fields.items()
        ]
        definitions[model.__name__] = {**own, "properties": properties, "allOf": choose}
    own = _mapping(definitions[SetValues.__name__])
    properties = {**_mapping(own["properties"]), "kind": _any_kind()}
    closed = _only([*properties, *(field for known in fields.values() for field in known)])
    definitions[SetValues.__name__] = {**own, "properties": properties, **closed}


def _ask_for_part_or_parts(definitions: Schema) -> None:
    """An acceptance names the part that leads a finding, or else all its parts."""
    one_of = [{"required": ["part"]}, {"required": ["parts"]}]
    definitions["Acceptance"] = {**_mapping(definitions["Acceptance"]), "oneOf": one_of}


def _only(names: Iterable[str]) -> Schema:
    return {"propertyNames": {"enum": list(dict.fromkeys(names))}}


class _Tidy:
    """Makes a schema shorter and kinder: no titles, each quantity written once, its units in the description."""

    def __init__(self) -> None:
        texts = {dimension: _text_of(dimension) for dimension in DIMENSIONS}
        self.by_pattern = {text["pattern"]: dimension for dimension, text in texts.items()}
        self.used: dict[str, Schema] = {}

    def quantities(self) -> Schema:
        """The texts with a unit that were met, by the name they are referred to."""
        return dict(sorted(self.used.items()))

    def tidied(self, schema: object) -> object:
        """A schema, or a part of one, tidied through and through."""
        if isinstance(schema, list):
            return [self.tidied(one) for one in schema]
        if not isinstance(schema, dict):
            return schema
        kept = {key: one for key, one in schema.items() if key != "title" or not isinstance(one, str)}
        tidy = {key: one if key in _DATA else self.tidied(one) for key, one in kept.items()}
        if isinstance(tidy.get("anyOf"), list):
            return self._flat(tidy)
        return tidy

    def _flat(self, schema: Schema) -> Schema:
        """A choice without choices inside it that say nothing more."""
        choices: list[object] = []
        about = str(schema.get("description", ""))
        for choice in [*_list(schema["anyOf"])]:
            inner = _mapping(choice)
            if inner.keys() <= {"anyOf", "description"} and "anyOf" in inner:
                choices += _list(inner["anyOf"])
                about = f"{about} {inner.get('description', '')}"
            else:
                choices.append(choice)
        for at, choice in enumerate(choices):
            dimension = self.by_pattern.get(_mapping(choice).get("pattern", ""))
            if dimension is not None:
                name = f"{dimension.name} in text"
                self.used[name] = _mapping(choice)
                choices[at] = {"$ref": f"#/$defs/{name}"}
                units = _about(dimension)
                about = about if units in about else f"{about} {units}"
        tidy = {**schema, "anyOf": choices, **({"description": about.strip()} if about else {})}
        return tidy if len(choices) > 1 else {**_mapping(tidy.pop("anyOf") and choices[0]), **tidy}


def _list(value: object) -> list[object]:
    """A part of a schema that is known to be a list."""
    if not isinstance(value, list):
        raise TypeError("the schema is not of the form that its library promises")
    return value


def _quantity(dimension: Dimension) -> Schema:
    return TypeAdapter(Annotated[float, Quantity(dimension)]).json_schema()


def _text_of(dimension: Dimension) -> Schema:
    """The schema of a text that gives a quantity with its unit."""
    return _mapping(_list(_quantity(dimension)["anyOf"])[1])


def _about(dimension: Dimension) -> str:
    return str(_quantity(dimension)["description"])
