"""Quantities as fields of a model: what an author writes is read into SI, within bounds, and described."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, TypeAlias, get_args

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationInfo
from pydantic.fields import FieldInfo
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from plumbnet.layout.units.measure import (
    CONVERSION_ROUNDING,
    QuantityError,
    demand_sense,
    measure_as_written,
    measured,
    parse_measure,
    show,
    show_bound,
    show_in,
    to,
    unit_as_written,
)
from plumbnet.layout.units.sensible_bounds import DEEPEST_M, HIGHEST_M, LONGEST_M
from plumbnet.layout.units.units import (
    CASE_MATTERS,
    DIMENSIONS,
    FLOW,
    FRACTION,
    HEAD,
    LENGTH,
    PASCAL_PER_METRE,
    POWER,
    PRESSURE,
    SIZE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TIME,
    VOLUME,
    Dimension,
    Unit,
    Units,
)

__all__ = [
    "DIMENSIONS",
    "FLOW",
    "FRACTION",
    "HEAD",
    "LENGTH",
    "PASCAL_PER_METRE",
    "POWER",
    "PRESSURE",
    "SIZE",
    "TEMPERATURE",
    "TEMPERATURE_DIFFERENCE",
    "TIME",
    "VOLUME",
    "Dimension",
    "Duration",
    "Elevation",
    "Flow",
    "Fraction",
    "Length",
    "Power",
    "Pressure",
    "Quantity",
    "QuantityError",
    "Size",
    "Temperature",
    "TemperatureDifference",
    "Unit",
    "Units",
    "Volume",
    "parse_measure",
    "quantity_of",
    "show",
    "to",
]

_SLIVER = 1e-5  # by which a bound in a schema is wider, so that it refuses nothing that is read


@dataclass(frozen=True, slots=True)
class Quantity:
    """Mark of a pydantic field that holds a quantity: `Annotated[float, Quantity(PRESSURE)]`.

    With a validation context as {"units": "us"} or {"units": "metric"} the field reads what an author wrote;
    without one a number is SI already and a text must carry its unit. Bounds are SI, on top of those of the dimension.
    """

    dimension: Dimension
    above: float | None = None
    at_least: float | None = None
    at_most: float | None = None
    usual: tuple[float, float] | None = None
    """Between what it lies in most buildings, in SI (common practice, from memory); nothing is held to it."""

    def read(self, written: str | float, units: Units | None) -> float:
        """The SI value of what an author wrote, within the bounds. Raises QuantityError."""
        value = measured(written, self.dimension, units)
        wrong = self._wrong(value)
        if wrong is None:
            demand_sense(value, written, self.dimension, units)
            return value
        told = wrong(unit_as_written(written, self.dimension, units))
        raise QuantityError(f"{measure_as_written(written, self.dimension, units)} is {told} is wanted here")

    def _wrong(self, value: float) -> Callable[[str], str] | None:
        """What is wrong with a value and what would be right, in the unit that is named; None where nothing is."""
        above, least, most, dimension = self.above, self.at_least, self.at_most, self.dimension
        if above is not None and value <= above:
            return lambda unit: f"too low; more than {show_in(above, unit, dimension)}"
        if least is not None and value < least - CONVERSION_ROUNDING * abs(least):
            return lambda unit: f"too low; at least {show_bound(least, unit, dimension, low=True)}"
        if most is not None and value > most + CONVERSION_ROUNDING * abs(most):
            return lambda unit: f"too high; at most {show_bound(most, unit, dimension, low=False)}"
        return None

    @property
    def lowest(self) -> float:
        """The lower bound, in SI; the bound itself may be excluded."""
        own = self.above if self.above is not None else self.at_least
        return self.dimension.floor if own is None else max(own, self.dimension.floor)

    @property
    def highest(self) -> float:
        """The upper bound, in SI."""
        return self.dimension.ceiling if self.at_most is None else min(self.at_most, self.dimension.ceiling)

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """A reader of this quantity in front of a plain float."""

        def read(written: str | float, info: ValidationInfo) -> float:
            return self.read(written, info.context["units"] if info.context else None)

        return core_schema.with_info_before_validator_function(read, core_schema.float_schema())

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        """A number or a text with a unit; what is written out is a number."""
        if handler.mode == "serialization":
            return handler(schema)
        dimension = self.dimension
        text = {"type": "string", "pattern": _pattern(dimension), "examples": list(dimension.examples)}
        bounds = {"minimum": self._in_any_units(self.lowest, low=True), "maximum": self._in_any_units(self.highest)}
        return {"anyOf": [{"type": "number", **bounds}, text], "description": _description(dimension)}

    def _in_any_units(self, bound: float, *, low: bool = False) -> float:
        """A bound of a bare number that holds in whatever units the file may have: a schema does not know them."""
        each = [(bound - unit.zero) / unit.size for unit in map(self.dimension.bare, get_args(Units))]
        widest = min(each) if low else max(each)
        return float(f"{widest - _SLIVER * abs(widest) if low else widest + _SLIVER * abs(widest):.6g}")


def quantity_of(info: FieldInfo) -> Quantity | None:
    """The quantity a field holds, also where it may be left empty."""
    found = [mark for mark in info.metadata if isinstance(mark, Quantity)]
    for choice in get_args(info.annotation):
        found += [mark for mark in getattr(choice, "__metadata__", ()) if isinstance(mark, Quantity)]
    return found[0] if found else None


def _description(dimension: Dimension) -> str:
    us, metric, bar = dimension.us, dimension.metric, dimension.metric_bar
    if "" in dimension.units:
        return f"A {dimension.name}."
    other = f"{us} or, where units are metric, in {metric}" + (f", or metric-bar, in {bar}" if bar else "")
    bare = us if us == metric else other
    return f"A {dimension.name}; a bare number is in {bare}."


def _pattern(dimension: Dimension) -> str:
    """A regular expression (ECMA 262) for the texts that are read, a little wider in the number."""
    longest_first = sorted(filter(None, dimension.units), key=lambda name: (-len(name), name))
    names = "|".join(map(_any_case, longest_first))
    return rf"^\s*[-+−]?\s*[0-9.½¼¾⅜⅝⅞][-+0-9.,/eE½¼¾⅜⅝⅞\s]*({names})?\s*$"


def _any_case(name: str) -> str:
    first = name[0] if name in CASE_MATTERS else ""
    folded = (f"[{c.lower()}{c.upper()}]" if c.isascii() and c.isalpha() else c for c in name[len(first) :])
    return first + "".join(folded)


Pressure: TypeAlias = Annotated[float, Quantity(PRESSURE)]
Length: TypeAlias = Annotated[float, Quantity(LENGTH, at_least=0.0, at_most=LONGEST_M)]
Elevation: TypeAlias = Annotated[float, Quantity(LENGTH, at_least=DEEPEST_M, at_most=HIGHEST_M)]
Size: TypeAlias = Annotated[float, Quantity(SIZE)]
Volume: TypeAlias = Annotated[float, Quantity(VOLUME)]
Temperature: TypeAlias = Annotated[float, Quantity(TEMPERATURE)]
TemperatureDifference: TypeAlias = Annotated[float, Quantity(TEMPERATURE_DIFFERENCE)]
Power: TypeAlias = Annotated[float, Quantity(POWER)]
Flow: TypeAlias = Annotated[float, Quantity(FLOW)]
Fraction: TypeAlias = Annotated[float, Quantity(FRACTION)]
Duration: TypeAlias = Annotated[float, Quantity(TIME)]
