"""Failed validation to faults: where each mistake stands, what is wrong and what would be right, in plain words."""

from collections.abc import Iterator

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from plumbnet.layout.fault import Fault, nearest, quoted
from plumbnet.layout.source import Node


def faults_of(error: ValidationError, node: Node, *, what: str, model: type[BaseModel]) -> Iterator[Fault]:
    """Each mistake of a declaration as a fault; `what` names the declaration, `node` is where it stands."""
    for detail in error.errors(include_url=False):
        yield _fault(detail, node, what, model)


def _fault(detail: ErrorDetails, node: Node, what: str, model: type[BaseModel]) -> Fault:
    path = [step for step in detail["loc"] if not isinstance(step, str) or not step.startswith("function-")]
    field = str(path[-1]) if path else ""
    match detail["type"]:
        case "missing":
            place = node.at(*path[:-1])
            return _at(place, f'{what} needs "{field}"')
        case "extra_forbidden":
            place = node.at(*path[:-1])
            line, column = (place.keys or {}).get(field, (place.line, place.column))
            fields = _fields(model) if len(path) == 1 else []
            hint = nearest(field, fields) or (f"its fields are {', '.join(fields)}" if fields else "")
            return Fault(line, column, f'{what} has no field "{field}"', hint, len(field))
        case kind:
            return _at(node.at(*path), _sentence(kind, detail, field or what))


def _sentence(kind: str, detail: ErrorDetails, field: str) -> str:
    """What is wrong with a value and what is wanted, from the library's name for the mistake."""
    context, written = detail.get("ctx", {}), _shown(detail["input"])
    sentences = {
        "value_error": f"{context.get('error')}",
        "literal_error": f"{written} is not known; write {context.get('expected')}",
        "bool_type": f"write true or false, not {written}",
        "string_type": f"a name or text is wanted here, not {written}",
        "tuple_type": f"a list is wanted here, not {written}",
        "list_type": f"a list is wanted here, not {written}",
        "model_type": f"a mapping of fields is wanted here, not {written}",
        "model_attributes_type": f"a mapping of fields is wanted here, not {written}",
        "dict_type": f"a mapping is wanted here, not {written}",
        "string_pattern_mismatch": f"write a name in small letters, digits and _, not {written}",
        "too_short": f"at least {context.get('min_length')} wanted here",
    }
    return f"{field}: {sentences.get(kind) or detail['msg'][:1].lower() + detail['msg'][1:]}"


def _shown(value: object) -> str:
    match value:
        case None:
            return "nothing"
        case bool():
            return "true" if value else "false"
        case dict():
            return "a mapping"
        case list() | tuple():
            return "a list"
        case _:
            return quoted(str(value))


def _fields(model: type[BaseModel]) -> list[str]:
    return [field.alias or name for name, field in model.model_fields.items()]


def _at(node: Node, text: str) -> Fault:
    return Fault(node.line, node.column, text, width=node.width)
