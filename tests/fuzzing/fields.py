"""Anything declared field by field to values for its fields, found out from the declaration alone."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random
from types import UnionType
from typing import Annotated, Final, Literal, Union, get_args, get_origin

from pydantic import ValidationError
from pydantic.fields import FieldInfo

from fuzzing.extremes import BEYOND, drawn_extreme
from fuzzing.odd import NUMBERS, UNITS, WORDS
from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.units.measure import to
from plumbnet.layout.units.quantity import Quantity, quantity_of
from plumbnet.layout.units.units import (
    FRACTION,
    HEAD,
    LENGTH,
    POWER,
    PRESSURE,
    SIZE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    VOLUME,
    Dimension,
)

Value = object
USUAL: Final[dict[Dimension, tuple[float, float]]] = {
    PRESSURE: (0.0, 1.2e6),
    LENGTH: (0.0, 30.0),
    SIZE: (0.01, 0.1),
    VOLUME: (0.001, 1.0),
    TEMPERATURE: (275.0, 370.0),
    TEMPERATURE_DIFFERENCE: (1.0, 50.0),
    POWER: (1e3, 1e5),
    FRACTION: (0.0, 0.6),
    HEAD: (1e3, 3e5),
}
"""Usual values by dimension, in SI; of a new dimension 0 to 100."""
PORTS: Final = ("a", "b", "c", "d")
_TRIES = 20  # until all values together are allowed, which rules of a whole declaration may forbid
_LEFT_OUT = 0.55
_AGAIN = 0.5  # a value that stands elsewhere too, so that things lie exactly alike


@dataclass
class Filling:
    """Fills in fields; `oddness` is the share of values from 0 to 1 that no author would write.

    `extremity` is the share of quantities that lie at an edge of what their declaration allows.
    """

    random: Random
    oddness: float
    extremity: float = 0.0
    given: dict[Dimension, list[float]] = field(default_factory=dict)

    def fields(self, model: type[Declared]) -> dict[str, Value]:
        """Values for the fields of a model, nearly always ones that it allows."""
        values: dict[str, Value] = {}
        for _ in range(_TRIES):
            values = {
                info.alias or name: self._field(info)
                for name, info in model.model_fields.items()
                if info.is_required() or self.random.random() > _LEFT_OUT
            }
            if _allows(model, values) or self.is_odd():
                break
        return values

    def is_odd(self) -> bool:
        """Whether this once something odd is to stand here."""
        return self.random.random() < self.oddness

    def quantity(self, quantity: Quantity) -> Value:
        """A quantity as an author may write it."""
        dimension = quantity.dimension
        if self.is_odd() and self.is_odd():
            number = self.random.choice((*NUMBERS, *BEYOND))
            return self.random.choice((number, f"{number} {self.random.choice(list(dimension.units))}", [], {}, None))
        value = self._value(quantity)
        unit = self.random.choice([name for name in dimension.units if name])
        if self.is_odd() and self.is_odd():
            unit = self.random.choice(UNITS)
            return f"{value!r} {unit}"
        return f"{to(value, unit, dimension)!r} {unit}"

    def _value(self, quantity: Quantity) -> float:
        dimension = quantity.dimension
        known = self.given.setdefault(dimension, [])
        if self.extremity and self.random.random() < self.extremity:
            return drawn_extreme(self.random, quantity)
        if known and self.random.random() < _AGAIN:
            return self.random.choice(known)
        value = self._extreme(quantity) if self.is_odd() else self.random.uniform(*USUAL.get(dimension, (0.0, 100.0)))
        known.append(value)
        return value

    def _extreme(self, quantity: Quantity) -> float:
        power = 10.0 ** self.random.uniform(-12, 9)
        return self.random.choice((drawn_extreme(self.random, quantity), power, power, -power, 1e-300))

    def _field(self, info: FieldInfo) -> Value:
        found = quantity_of(info)
        if found is not None and get_origin(info.annotation) is not tuple:
            return self.quantity(found)
        return self.of_type(info.annotation)

    def of_type(self, annotation: object) -> Value:
        """A value of an annotated type."""
        if self.is_odd() and self.is_odd() and self.is_odd():
            return self.random.choice((*WORDS, *NUMBERS, None, [], {}, [[]]))
        origin, inner = get_origin(annotation), get_args(annotation)
        if origin is Annotated:
            marks = [mark for mark in inner[1:] if isinstance(mark, Quantity)]
            return self.quantity(marks[0]) if marks else self.of_type(inner[0])
        if origin in {Union, UnionType}:
            return self.of_type(self.random.choice([one for one in inner if one is not type(None)]))
        if origin is Literal:
            return self.random.choice(inner)
        if origin is tuple:
            return self._several(inner)
        return self._plain(annotation)

    def _plain(self, annotation: object) -> Value:
        if isinstance(annotation, type) and issubclass(annotation, Declared):
            return self.fields(annotation)
        if annotation is bool:
            return self.random.random() < 0.5
        if annotation in {int, float}:
            return self.random.randrange(100)
        return self.random.choice(PORTS)

    def _several(self, inner: Sequence[object]) -> list[Value]:
        """What stands in a tuple, of any length or of just this one; words in it are unlike each other."""
        types = [inner[0]] * self.random.randint(1, len(PORTS)) if inner[-1] is Ellipsis else list(inner)
        values = [self.of_type(one) for one in types]
        if all(isinstance(value, str) and value in PORTS for value in values):
            return list(self.random.sample(PORTS, len(values)))
        return values


def _allows(model: type[Declared], values: dict[str, Value]) -> bool:
    try:
        model.model_validate(values, context={"units": "metric"})
    except ValidationError:
        return False
    return True
