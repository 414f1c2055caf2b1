"""What assemblies add to the schema of a layout: instances, `times`, values that differ, lists of changes."""

from collections.abc import Iterable, Mapping

Schema = dict[str, object]

_FOR_SCENARIOS = ("fail", "draw")
_LABEL = r"^[^\s./>-]([^./>]*[^\s./>-])?$"
_MANY_IN_PATH = "/"
_TIMES: Schema = {
    "description": "How often it is there: a count (20), a range (101-120), or a list of names and ranges.",
    "anyOf": [
        {"type": "integer", "minimum": 1, "maximum": 100_000},
        {"type": "string"},
        {"type": "array", "items": {"type": ["string", "integer"]}, "minItems": 1},
    ],
    "examples": [20, "101-120", ["east", "west"]],
}
_USE: Schema = {"type": "string", "description": "The assembly that it is an instance of."}


def varied(schema: Schema, definitions: Schema) -> Schema:
    """The schema of a value that may differ from one to the next: the value, a list of it, or first and step.

    What is a list by nature stays one, for all.
    """
    if schema.get("type") == "array":
        return schema
    alone = {key: one for key, one in schema.items() if key not in {"description", "default", "examples"}}
    about = {key: one for key, one in schema.items() if key in {"description", "examples"}}
    choices: list[object] = [alone, {"type": "array", "items": alone, "minItems": 1}]
    if _is_quantity(schema):
        properties = {"first": {**alone, "description": "That of the first."}, "step": {**_no_null(alone), **_STEP}}
        step: Schema = {"type": "object", "properties": properties, "required": ["first", "step"]}
        choices.append({**step, "additionalProperties": False})
    choices += [_varied_inside(name, definitions) for name in _references(schema)]
    return {**about, "anyOf": choices}


_STEP: Schema = {"description": "What each next one has more; of temperature a difference."}


def _varied_inside(reference: str, definitions: Schema) -> Schema:
    """A mapping in which each value may differ."""
    name = f"differing {reference}"
    if name not in definitions:
        definitions[name] = {}
        definitions[name] = _differing(definitions[reference], definitions)
    return {"$ref": f"#/$defs/{name}"}


def _differing(model: object, definitions: Schema) -> object:
    """A schema in which each field of a mapping may differ, whichever of several choices the mapping is."""
    if not isinstance(model, dict):
        return model
    if isinstance(model.get("anyOf"), list):
        return {**model, "anyOf": [_differing(one, definitions) for one in model["anyOf"]]}
    properties = {key: varied(one, definitions) for key, one in model.get("properties", {}).items()}
    return {**model, "properties": properties} if properties else model


def _references(schema: Schema) -> list[str]:
    choices = schema.get("anyOf", [schema])
    refs = [one.get("$ref") for one in choices if isinstance(one, dict)] if isinstance(choices, list) else []
    return [str(ref).removeprefix("#/$defs/") for ref in refs if ref]


def _is_quantity(schema: Schema) -> bool:
    """Whether it is a number or a text with a unit, or may be."""
    choices = schema.get("anyOf", [])
    inside = [one for one in choices if isinstance(one, dict)] if isinstance(choices, list) else []
    return any(one.get("type") == "number" for one in inside) or any(_is_quantity(one) for one in inside)


def _no_null(schema: Schema) -> Schema:
    choices = schema.get("anyOf")
    if not isinstance(choices, list):
        return schema
    return {**schema, "anyOf": [one for one in choices if one != {"type": "null"}]}


def with_times(kind: Schema, definitions: Schema) -> Schema:
    """The schema of many parts of one kind, from that of one: `times`, and values that may differ."""
    own = kind.get("properties")
    if not isinstance(own, dict):
        raise TypeError("the schema is not of the form that its library promises")
    properties = {key: one if key == "kind" else varied(one, definitions) for key, one in own.items()}
    return {**kind, "properties": {"times": _TIMES, **properties}}


def instance(elevation: Schema, fields: Mapping[str, Schema], definitions: Schema) -> Schema:
    """The schema of an instance: `each` offers the fields of every kind, for it cannot know that of the part inside."""
    height = varied(elevation, definitions)
    each = {
        "type": "object",
        "description": "Values of parts inside, by their names.",
        "additionalProperties": {"$ref": "#/$defs/values of a part inside"},
    }
    definitions["values of a part inside"] = {
        "type": "object",
        "properties": {**{name: varied(one, definitions) for name, one in fields.items()}, "each": each},
        "additionalProperties": False,
    }
    return {
        "type": "object",
        "required": ["use"],
        "properties": {"use": _USE, "times": _TIMES, "elevation": height, "each": each},
        "additionalProperties": False,
    }


def assembly(parts: Schema, runs: Schema) -> Schema:
    """The schema of an assembly."""
    port = {
        "type": "string",
        "description": "A part inside, with its port where it has several.",
        "examples": ["stop.in"],
    }
    ports = {
        "description": "Where the building joins to it: names of parts inside, or names with a port each.",
        "anyOf": [
            {"type": "array", "items": {"type": "string", "pattern": _LABEL}, "minItems": 1, "uniqueItems": True},
            {"type": "object", "propertyNames": {"pattern": _LABEL}, "additionalProperties": port, "minProperties": 1},
        ],
    }
    return {
        "type": "object",
        "description": "Parts and runs written once.",
        "required": ["ports"],
        "properties": {
            "note": {"type": "string", "description": "What it is."},
            "ports": ports,
            "parts": {**parts, "additionalProperties": {"$ref": "#/$defs/part of an assembly"}},
            "runs": runs,
            "change": {"$ref": "#/$defs/changes of the building"},
        },
        "additionalProperties": False,
    }


def changes(change: Schema) -> Schema:
    """The schema of a `change` list outside scenarios, from that of one change there."""
    own = change.get("properties")
    properties = {key: one for key, one in own.items() if key not in _FOR_SCENARIOS} if isinstance(own, dict) else {}
    about = "Where it differs, made in this order once all is written out."
    return {"type": "array", "description": about, "items": {**change, "properties": properties}}


def run_of_many(run: Schema, definitions: Schema) -> Schema:
    """The schema of a run with what is known of its pipe, which may differ where its path names many."""
    own = run.get("properties")
    properties: dict[str, Schema] = own if isinstance(own, dict) else {}
    apart = {key: one if key == "path" else varied(one, definitions) for key, one in properties.items()}
    about = "Names joined by ->, of which some stand for many."
    many = {"properties": {"path": {"type": "string", "pattern": _MANY_IN_PATH, "description": about}}}
    return {"if": many, "then": {**run, "properties": apart}, "else": run}


def fields_of(kinds: Iterable[Schema]) -> dict[str, Schema]:
    """Every field of every kind; of one that several have, what any of them takes."""
    found: dict[str, list[Schema]] = {}
    for kind in kinds:
        own = kind.get("properties")
        for name, one in own.items() if isinstance(own, dict) else ():
            if name != "kind" and one not in found.setdefault(name, []):
                found[name].append(one)
    return {name: ones[0] if len(ones) == 1 else {**_described(ones), "anyOf": ones} for name, ones in found.items()}


def _described(schemas: Iterable[Schema]) -> Schema:
    """What the first of some schemas says of itself."""
    return next({"description": one["description"]} for one in schemas if "description" in one)
