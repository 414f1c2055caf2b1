"""The kinds of part as an author looks them up: fields, units, defaults, ports and what is taken for granted."""

import inspect
import json
import textwrap
from collections.abc import Iterator, Mapping
from types import UnionType
from typing import Annotated, Literal, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from plumbnet.layout.model import KINDS, Declared, Part, declared_in, said_of
from plumbnet.layout.units import quantity_of, show

CATALOGUE_WIDTH = 100


def kinds_text() -> str:
    """Every kind with its first sentence, sorted by name."""
    widest = max(map(len, KINDS))
    lines = [line for name in sorted(KINDS) for line in _hung(f"{name.ljust(widest)}  ", _about(KINDS[name])[0])]
    return "\n".join(lines) + "\n"


def kind_text(name: str) -> str:
    """One kind: what it is, its ports, its fields with units and defaults, and how it can fail.

    Raises KeyError for a kind that there is not.
    """
    declared = KINDS[name]
    lines = [name, ""]
    for paragraph in _about(declared):
        lines += [*textwrap.wrap(paragraph, CATALOGUE_WIDTH), ""]
    lines += [*_ports(declared), "", "fields:"]
    lines += _fields(declared, "  ")
    if declared.assumed:
        lines += ["", "taken when left out:", *(f"  it {words}" for words in declared.assumed.values())]
    if declared.failures:
        lines += ["", f"can fail as: {', '.join(declared.failures)}"]
    return "\n".join(lines) + "\n"


def schema_text(schema: Mapping[str, object]) -> str:
    """A JSON Schema as it is written; ends with a line break."""
    return json.dumps(schema, indent=1, ensure_ascii=True) + "\n"


def _about(declared: type[Part]) -> list[str]:
    text = inspect.cleandoc(declared.__doc__ or "")
    return [" ".join(paragraph.split()) for paragraph in text.split("\n\n")]


def _ports(declared: type[Part]) -> Iterator[str]:
    if "own_ports" in declared.model_fields:
        yield "ports: as its author writes them"
        return
    names = [f"{port} (any number of pipes)" if port in declared.shared else port for port in declared.ports]
    yield f"ports: {', '.join(names)}"
    if declared.inlet and declared.outlet and declared.inlet != declared.outlet:
        yield f"a run enters at {declared.inlet} and leaves at {declared.outlet}"


def _fields(declared: type[Declared], indent: str) -> Iterator[str]:
    """The fields of a declaration, those of declarations inside it further in."""
    for field, info in declared.model_fields.items():
        yield from _hung(f"{indent}{info.alias or field}: ", _field(info, said_of(declared).get(field, "")))
        for inner in declared_in(info.annotation):
            yield from _fields(inner, f"{indent}  ")


def _field(info: FieldInfo, said: str) -> str:
    need = "required" if info.is_required() else _default(info)
    return f"{_type(info)}, {need}. {' '.join(said.split())}".rstrip()


def _type(info: FieldInfo) -> str:
    quantity = quantity_of(info)
    if quantity is not None:
        us, metric = quantity.dimension.us, quantity.dimension.metric
        return f"{quantity.dimension.name} ({us})" if us == metric else f"{quantity.dimension.name} ({us} or {metric})"
    return _words(info.annotation)


def _words(annotation: object) -> str:
    if get_origin(annotation) is Literal:
        return " | ".join(map(str, get_args(annotation)))
    if get_origin(annotation) is Annotated:
        return _words(get_args(annotation)[0])
    if get_origin(annotation) in {Union, UnionType}:
        return _words(next(choice for choice in get_args(annotation) if choice is not type(None)))
    if get_origin(annotation) is tuple:
        first, second = get_args(annotation)
        if second is not Ellipsis:
            return "two names"
        return "list of mappings" if list(declared_in(first)) else "list of names"
    return {bool: "true | false", str: "text"}.get(annotation, "mapping") if isinstance(annotation, type) else "mapping"


def _default(info: FieldInfo) -> str:
    quantity = quantity_of(info)
    if info.default is None:
        return "may be left out"
    if quantity is not None and isinstance(info.default, float):
        us, metric = (show(info.default, quantity.dimension, units) for units in ("us", "metric"))
        return f"default {us}" if us == metric else f"default {metric} ({us})"
    text = str(info.default).lower() if isinstance(info.default, bool) else str(info.default)
    return f"default {text}"


def _hung(label: str, text: str) -> list[str]:
    indent = " " * min(len(label), 28)
    return textwrap.wrap(text, CATALOGUE_WIDTH, initial_indent=label, subsequent_indent=indent, break_on_hyphens=False)
