"""Two layouts compared as what they are in a building: the same parts, joined by the same pipes."""

import math
from collections.abc import Iterator, Mapping

from plumbnet.layout.model import Part, Pipe, System
from plumbnet.layout.rewriting.run_texts import ROUNDING


def first_difference(one: System, other: System) -> str:
    """What differs first between two layouts, in words; nothing where they are the same.

    The same are parts by their names with all their values and those left out, and pipes by what they join, whichever
    way they are written, with their size, length and water; quantities to five digits.
    """
    return next(_differences(one, other), "")


def _differences(one: System, other: System) -> Iterator[str]:
    for name in [*one.parts, *other.parts]:
        first, second = one.parts.get(name), other.parts.get(name)
        if first is None or second is None:
            yield f"{name} is there in one only"
        elif not _is_alike(first, second):
            yield f"{name} differs"
    ours, theirs = _joined(one), _joined(other)
    for key in [*ours, *theirs]:
        if key not in ours or key not in theirs or not _are_alike(ours[key], theirs[key]):
            yield f"the pipe from {key[0][0]} to {key[1][0]} differs"


def _is_alike(one: Part, other: Part) -> bool:
    said, told = set(one.unsaid()), set(other.unsaid())
    return one.kind == other.kind and said == told and _is_close(one.model_dump(), other.model_dump())


def _joined(system: System) -> dict[tuple[tuple[str, str], tuple[str, str]], list[Pipe]]:
    found: dict[tuple[tuple[str, str], tuple[str, str]], list[Pipe]] = {}
    for pipe in system.pipes:
        first, second = sorted(pipe.ends)
        found.setdefault((first, second), []).append(pipe)
    return found


def _are_alike(ours: list[Pipe], theirs: list[Pipe]) -> bool:
    return _is_close(sorted(map(_values, ours)), sorted(map(_values, theirs)))


def _values(pipe: Pipe) -> list[object]:
    return [pipe.tube or "", -1.0 if pipe.length_m is None else pipe.length_m, pipe.volume_m3]


def _is_close(one: object, other: object) -> bool:
    """Whether two values of plain data are the same, numbers nearly so."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(_is_close(value, other[key]) for key, value in one.items())
    if isinstance(one, list | tuple) and isinstance(other, list | tuple):
        return len(one) == len(other) and all(map(_is_close, one, other))
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=ROUNDING, abs_tol=1e-12)
    return one == other
