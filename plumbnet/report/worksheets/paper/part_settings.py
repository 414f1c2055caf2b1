"""A part to the pressures and sizes that stand at it in a picture, as its author wrote them: nothing is judged."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.model import Part, System
from plumbnet.layout.units import LENGTH, POWER, TEMPERATURE, Dimension, quantity_of, show


def part_settings(system: System, name: str) -> Iterator[str]:
    """A line for each pressure and size of a part that was written, for how it was written to stand, and its height.

    A quantity is named where another of its dimension stands before it. What a relief valve opens at is told by its
    pressure alone, how fast something heats not at all, and the height only where pressures are read or held.
    """
    part, units = system.parts[name], system.units
    told = set[Dimension]()
    for written in _written(part):
        if isinstance(written.value, bool):
            yield written.field if written.value else f"no {written.field}"
        elif isinstance(written.value, str):
            yield written.value
        elif written.dimension is not None and _is_shown(part, written.dimension):
            if written.dimension in told:
                yield written.field
            yield show(written.value, written.dimension, units)
            told.add(written.dimension)
    if part.elevation_m and name in system.written and (told or part.draws_at()):
        yield f"{'up' if part.elevation_m > 0.0 else 'down'} {show(abs(part.elevation_m), LENGTH, units)}"


@dataclass(frozen=True, slots=True)
class _Written:
    """A field that was written: its name in the file, what it holds, and of which dimension that is."""

    field: str
    value: bool | str | float
    dimension: Dimension | None


def _written(part: Part) -> Iterator[_Written]:
    """The fields of a part that were written, but those that are parts of their own."""
    for name, info in type(part).model_fields.items():
        value, quantity = getattr(part, name), quantity_of(info)
        if name in part.model_fields_set and isinstance(value, bool | str | float):
            field = (info.alias or name).replace("_", " ")
            yield _Written(field, value, None if quantity is None else quantity.dimension)


def _is_shown(part: Part, dimension: Dimension) -> bool:
    if dimension is TEMPERATURE:
        return part.heat() is not None
    return dimension not in {LENGTH, POWER}
