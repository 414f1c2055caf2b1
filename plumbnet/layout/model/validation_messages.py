"""Failed validation to mistakes: where each stands, what is wrong and what would be right, in plain words."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from types import UnionType
from typing import Annotated, Literal, Union, get_args, get_origin

from pydantic import ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.units import Quantity
from plumbnet.layout.yaml import Fault, YamlNode, nearest, quoted

Path = tuple[str | int, ...]
Suggest = Callable[[str, Iterable[str]], str]
"""Called with a word and those known; returns a question that offers the nearest, or nothing."""

_PAIR = "exactly two names are wanted here"
_NO_PAIR = "an item of a pair is missing"


@dataclass(frozen=True, slots=True)
class Mistake:
    """What is wrong at the end of a path of keys, and what would be right.

    `at_key` says that the last key itself is meant, not its value. `meant` is a word that nobody knows and
    those that are known; `hint` stands where none is like it.
    """

    path: Path
    text: str
    hint: str = ""
    at_key: bool = False
    meant: tuple[str, Iterable[str]] = ("", ())

    def under(self, *path: str | int) -> "Mistake":
        """The same mistake seen from further out."""
        return replace(self, path=(*path, *self.path))

    def fault(self, root: YamlNode, suggest: Suggest = nearest) -> Fault:
        """The mistake at its place below `root`."""
        hint = suggest(*self.meant) or self.hint
        node = root.at(*self.path)
        if self.at_key and self.path:
            key = str(self.path[-1])
            place = (root.at(*self.path[:-1]).keys or {}).get(key)
            if place is not None:
                return Fault(*place, self.text, hint, max(1, len(key)))
        return Fault(node.line, node.column, self.text, hint, node.width)

    def __str__(self) -> str:
        return Fault(0, 0, self.text, nearest(*self.meant) or self.hint).sentence


def mistakes(error: ValidationError, *, what: str, model: type[Declared]) -> Iterator[Mistake]:
    """Each mistake in a declaration of `model`; `what` is what a sentence calls it, as "tank, an expansion_tank,"."""
    details = error.errors(include_url=False)
    inner = {detail["loc"][:length] for detail in details for length in range(len(detail["loc"]))}
    slips: dict[Path, str] = {}
    for detail in details:
        if detail["type"] == "extra_forbidden":
            mistake = _unknown_field(detail, what, model)
            slips[mistake.path[:-1]] = slips.get(mistake.path[:-1], "") + mistake.hint
            yield mistake
    for detail in details:
        path = detail["loc"]
        match detail["type"]:
            case "extra_forbidden":
                continue
            case "missing" if isinstance(path[-1], str):
                if quoted(path[-1]) not in slips.get(path[:-1], ""):
                    yield _missing(path, what, model)
            case "too_short" if path in inner:
                continue  # the library counts only the items without a mistake
            case _:
                yield _wrong(detail, what)


def validation_faults(error: ValidationError, node: YamlNode, *, what: str, model: type[Declared]) -> Iterator[Fault]:
    """Each mistake in a declaration that stands at `node`."""
    for mistake in mistakes(error, what=what, model=model):
        yield mistake.fault(node)


def with_article(kind: str) -> str:
    """A kind, as the file writes it, behind its article.

    >>> with_article("expansion_tank")
    'an expansion_tank'
    """
    return f"{'an' if kind[:1] in tuple('aeiou') else 'a'} {kind}"


def shown_value(value: object) -> str:
    """What the author wrote, as a sentence mentions it."""
    match value:
        case None:
            return "nothing"
        case bool():
            return "true" if value else "false"
        case int() | float():
            return str(value)
        case dict():
            return "a mapping"
        case list() | tuple():
            return "a list"
        case _:
            return quoted(str(value))


def is_bare(value: object) -> bool:
    """Whether what the author wrote would be a name, were it in quotes."""
    return isinstance(value, bool | int | float)


def _unknown_field(detail: ErrorDetails, what: str, model: type[Declared]) -> Mistake:
    path = detail["loc"]
    declared = _declared_at(model, path[:-1])
    known = [] if declared is None else [field.alias or name for name, field in declared.model_fields.items()]
    hint = nearest(str(path[-1]), known) or f"its fields are {', '.join(known)}"
    text = f"{_subject(what, declared, path[:-1])} has no field {quoted(str(path[-1]))}"
    return Mistake(path, text, hint, at_key=True)


def _missing(path: Path, what: str, model: type[Declared]) -> Mistake:
    declared = _declared_at(model, path[:-1])
    fields = {} if declared is None else {field.alias: field for field in declared.model_fields.values()}
    text = f"{_subject(what, declared, path[:-1])} needs {quoted(str(path[-1]))}"
    return Mistake(path[:-1], text, _example(str(path[-1]), fields.get(str(path[-1]))), at_key=True)


def _subject(what: str, declared: type[Declared] | None, path: Path) -> str:
    return what if not path or declared is None else declared.called


def _example(name: str, field: FieldInfo | None) -> str:
    if field is None:
        return ""
    for mark in field.metadata:
        if isinstance(mark, Quantity):
            return f"for example {name}: {' or '.join(dict.fromkeys(mark.dimension.examples[:2]))}"
    if get_origin(field.annotation) is Literal and not field.examples:
        return f"for example {name}: {get_args(field.annotation)[0]}"
    return f"for example {name}: {_yaml(field.examples[0])}" if field.examples else ""


def _yaml(value: object) -> str:
    match value:
        case dict():
            return f"{{{', '.join(f'{key}: {_yaml(inner)}' for key, inner in value.items())}}}"
        case list():
            return f"[{', '.join(map(_yaml, value))}]"
        case _:
            return str(value)


def _wrong(detail: ErrorDetails, what: str) -> Mistake:
    """A value that cannot be used; a sentence about a whole mapping stands at its key."""
    kind, path = detail["type"], detail["loc"]
    names = [step for step in path if isinstance(step, str)]
    label = names[-1] if names else what.rstrip(",")
    if kind == "missing":  # an item of a pair
        kind, path = _NO_PAIR, path[:-1]
    text, hint = _sentence(kind, detail)
    return Mistake(path, f"{label}: {text}", hint, at_key=isinstance(detail["input"], dict))


def _sentence(kind: str, detail: ErrorDetails) -> tuple[str, str]:
    """What is wrong with a value and what would be right, from the library's name for the mistake."""
    context, value = detail.get("ctx", {}), detail["input"]
    written = shown_value(value)
    expected = str(context.get("expected")).replace("'", '"')
    sentences = {
        "value_error": f"{context.get('error')}",
        "literal_error": f"write {expected}, not {written}",
        "enum": f"write {expected}, not {written}",
        "bool_type": f"write true or false, not {written}",
        "string_type": f"a name or text is wanted here, not {written}",
        "tuple_type": f"a list is wanted here, not {written}",
        "list_type": f"a list is wanted here, not {written}",
        "model_type": f"a mapping is wanted here, not {written}",
        "dict_type": f"a mapping is wanted here, not {written}",
        "string_pattern_mismatch": f"write a name in small letters, digits and _, not {written}",
        "too_short": "at least one is wanted here",
        "too_long": _PAIR,
        _NO_PAIR: _PAIR,
    }
    in_quotes = kind == "string_type" and is_bare(value)
    return sentences.get(kind, f"{written} cannot be used here"), "put it in quotes" if in_quotes else ""


def _declared_at(model: type[Declared], path: Path) -> type[Declared] | None:
    """The declaration that the value at the end of the path is meant to be."""
    annotation: object = model
    for step in path:
        annotation = next((found for choice in types_of(annotation) for found in _inside(choice, step)), None)
    declared = (one for one in types_of(annotation) if isinstance(one, type) and issubclass(one, Declared))
    return next(declared, None)


def declared_in(annotation: object) -> Iterator[type[Declared]]:
    """The declarations that a value of this type is made of, however deep they stand in lists and choices."""
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        yield annotation
    for choice in get_args(annotation):
        yield from declared_in(choice)


def types_of(annotation: object) -> Iterator[object]:
    """The types a value may have, without their marks."""
    if get_origin(annotation) is Annotated:
        yield from types_of(get_args(annotation)[0])
    elif get_origin(annotation) in {Union, UnionType}:
        for choice in get_args(annotation):
            yield from types_of(choice)
    else:
        yield annotation


def _inside(annotation: object, step: str | int) -> Iterator[object]:
    """The type of what stands at a key or index of a value."""
    arguments = get_args(annotation)
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        yield from (field.annotation for field in annotation.model_fields.values() if field.alias == step)
    elif get_origin(annotation) is dict:
        yield arguments[1]
    elif get_origin(annotation) in {tuple, list}:
        yield arguments[0]
