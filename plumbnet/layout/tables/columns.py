"""The columns that tables may have: what each means, which hold words, which there are for a template."""

import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from types import UnionType
from typing import Final, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from plumbnet.layout.model import KINDS, Declared
from plumbnet.layout.units import quantity_of

OWN: Final = "#"
"""How the head of a column, or the name of a sheet, begins that an author keeps for himself."""
PARTS: Final = ("name", "kind")
PIPES: Final = ("from", "to")
PIPE_FIELDS: Final = ("pipe", "length", "volume")
CONTENTS: Final = "contents"
"""The column of what each pipe holds, for people: an import passes over it."""
LAYOUT: Final = ("key", "value")
TANKS: Final = ("tank", "volume", "precharge", "acceptance", "rating", "elevation", "connected_at")
"""The columns of the tank schedule, which is made of the other tables."""
_TEXT_OF_PIPES: Final = frozenset({*PIPES, "pipe"})
_WITH_UNIT = re.compile(r"(?P<field>[\w.]+) ?[\[(](?P<unit>[^\])]+)[\])]")


def field_and_unit(column: str) -> tuple[str, str]:
    """The field of a column, and the unit in its head, which bare numbers in it have.

    >>> field_and_unit("volume [L]"), field_and_unit("relief.pressure (bar)"), field_and_unit("kind")
    (('volume', 'L'), ('relief.pressure', 'bar'), ('kind', ''))
    """
    found = _WITH_UNIT.fullmatch(column)
    return (found["field"], found["unit"].strip()) if found else (column, "")


@cache
def part_columns() -> tuple[str, ...]:
    """The columns of parts that there are: what most kinds have comes first; one inside another as relief.pressure."""
    counts = Counter(field for kind in KINDS.values() for field, _ in _fields(kind))
    order = list(counts)
    return (*PARTS, *sorted(counts, key=lambda field: (-counts[field], order.index(field))))


@cache
def is_text_column(field: str) -> bool:
    """Whether a column holds words, so that what looks like a number in it is none."""
    infos = [info for kind in KINDS.values() for name, info in _fields(kind) if name == field]
    return field in PARTS or field in _TEXT_OF_PIPES or (bool(infos) and all(map(_is_text, infos)))


@cache
def is_quantity_column(field: str) -> bool:
    """Whether a column holds a quantity, which a bare number is in the units of the layout."""
    infos = [info for kind in KINDS.values() for name, info in _fields(kind) if name == field]
    return field in PIPE_FIELDS[1:] or any(quantity_of(info) for info in infos)


def _is_text(info: FieldInfo) -> bool:
    choices = (info.annotation, *get_args(info.annotation))
    return any(one is str or get_origin(one) is Literal for one in choices)


def _fields(declared: type[Declared]) -> Iterator[tuple[str, FieldInfo]]:
    for name, info in declared.model_fields.items():
        field = info.alias or name
        inner = _declared_in(info)
        if inner is None:
            yield field, info
        else:
            yield from ((f"{field}.{own}", each) for own, each in _fields(inner))


def _declared_in(info: FieldInfo) -> type[Declared] | None:
    is_many = isinstance(get_origin(info.annotation), type) and get_origin(info.annotation) is not UnionType
    choices = () if is_many else (info.annotation, *get_args(info.annotation))
    return next((one for one in choices if isinstance(one, type) and issubclass(one, Declared)), None)
