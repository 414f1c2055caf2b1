"""The fields of anything declared, as a file would write them: by their names there, quantities in its units."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.units import CONVERSION_ROUNDING, Quantity, Units, quantity_of, show

_DIGITS: Final = (6, 9, 15)
"""Digits of a quantity: so many as no gauge has, or as many more as it takes to tell two apart."""
NOT_GIVEN = "not given"

Value = object


@dataclass(frozen=True, slots=True)
class FieldChange:
    """A field that holds another value than before, both as a file would write them."""

    field: str
    before: str
    after: str


def field_changes(before: Declared | None, after: Declared | None, units: Units) -> Iterator[FieldChange]:
    """Every field that differs, what is left out counting as what holds then; one inside another as `relief.pressure`.

    Where one of the two is missing or of another class, the fields that only one of them has count where they
    are given or have no default.
    """
    was, now = _named(before), _named(after)
    for name in dict.fromkeys([*was, *now]):
        yield from _change(name, was.get(name), now.get(name), units)


@dataclass(frozen=True, slots=True)
class _Held:
    """What a field holds; `quantity` says of which dimension it is."""

    value: Value
    quantity: Quantity | None
    is_given: bool


def _named(declared: Declared | None) -> dict[str, _Held]:
    if declared is None:
        return {}
    return {
        info.alias or name: _Held(getattr(declared, name), quantity_of(info), name in declared.model_fields_set)
        for name, info in type(declared).model_fields.items()
    }


def _change(name: str, was: _Held | None, now: _Held | None, units: Units) -> Iterator[FieldChange]:
    old, new = (None if held is None else held.value for held in (was, now))
    if isinstance(old, Declared) and isinstance(new, Declared):
        for inner in field_changes(old, new, units):
            yield FieldChange(f"{name}.{inner.field}", inner.before, inner.after)
        return
    held = was or now
    if held is None or _same(old, new) or ((was is None or now is None) and not held.is_given):
        return
    yield FieldChange(name, *fields_as_written(old, new, held.quantity, units))


def _same(old: Value, new: Value) -> bool:
    if isinstance(old, float) and isinstance(new, float):
        return abs(old - new) <= CONVERSION_ROUNDING * max(abs(old), abs(new))
    return old == new


def fields_as_written(old: Value, new: Value, quantity: Quantity | None, units: Units) -> tuple[str, str]:
    """Two values as a file would write them, with as many digits as it takes to tell them apart."""
    pairs = [(_text(old, quantity, units, digits), _text(new, quantity, units, digits)) for digits in _DIGITS]
    return next((pair for pair in pairs if pair[0] != pair[1]), pairs[-1])


def _text(value: Value, quantity: Quantity | None, units: Units, digits: int) -> str:
    if value is None:
        return NOT_GIVEN
    if isinstance(value, float) and quantity is not None:
        return show(value, quantity.dimension, units, digits)
    if isinstance(value, tuple):
        return f"[{', '.join(_text(each, quantity, units, digits) for each in value)}]"
    if isinstance(value, Declared):
        given = ((name, held) for name, held in _named(value).items() if held.is_given)
        return f"{{{', '.join(f'{name}: {_text(each.value, each.quantity, units, digits)}' for name, each in given)}}}"
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False, default=str)
