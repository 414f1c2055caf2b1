"""Two layouts to what a revision changed in them: parts, pipes and what stands beside them, in the file's units."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from plumbnet.layout.model import (
    NOT_GIVEN,
    Declared,
    End,
    FieldChange,
    Part,
    Pipe,
    System,
    field_changes,
    fields_as_written,
)
from plumbnet.layout.units import LENGTH, VOLUME, Quantity, Units

_ROUNDING_M = 1e-9
_ROUNDING_M3 = 1e-12


@dataclass(frozen=True, slots=True)
class Altered:
    """Something that stands in both layouts with other values."""

    name: str
    fields: tuple[FieldChange, ...]


@dataclass(frozen=True, slots=True)
class Named:
    """Something that stands in one of the layouts only; `kind` is that of a part, empty for anything else."""

    name: str
    kind: str = ""


@dataclass(frozen=True, slots=True)
class Changes:
    """What only one of the layouts has, in its order, and what both have with other values."""

    added: tuple[Named, ...] = ()
    removed: tuple[Named, ...] = ()
    altered: tuple[Altered, ...] = ()

    def __bool__(self) -> bool:
        """Whether there is any."""
        return bool(self.added or self.removed or self.altered)


@dataclass(frozen=True, slots=True)
class Revision:
    """What a revision changed. Parts are matched by name, pipes by the ports they join.

    A part that got another name counts as removed and added, and so do its pipes. A relief valve written inside a
    heater is one of its fields.
    """

    head: tuple[FieldChange, ...]
    parts: Changes
    pipes: Changes
    scenarios: Changes
    accepted: Changes

    def __bool__(self) -> bool:
        """Whether anything at all is different."""
        return bool(self.head or self.parts or self.pipes or self.scenarios or self.accepted)


def revision(before: System, after: System, *, units: Units | None = None) -> Revision:
    """What differs between two layouts, quantities in `units` or those of the later one; parts come with their kind."""
    units = units or after.units
    return Revision(
        head=tuple(_head(before, after, units)),
        parts=_changes(_parts(before), _parts(after), _part_name, lambda old, new: _part(old, new, units)),
        pipes=_pipes(before, after, units),
        scenarios=_changes(
            before.scenarios, after.scenarios, _own_name, lambda old, new: tuple(field_changes(old, new, units))
        ),
        accepted=_changes(
            _acceptances(before), _acceptances(after), _own_name, lambda old, new: tuple(field_changes(old, new, units))
        ),
    )


Thing = TypeVar("Thing")


def _changes(
    before: Mapping[str, Thing],
    after: Mapping[str, Thing],
    called: Callable[[str, Thing], Named],
    compared: Callable[[Thing, Thing], tuple[FieldChange, ...]],
) -> Changes:
    both = [Altered(name, compared(old, after[name])) for name, old in before.items() if name in after]
    return Changes(
        added=tuple(called(name, one) for name, one in after.items() if name not in before),
        removed=tuple(called(name, one) for name, one in before.items() if name not in after),
        altered=tuple(one for one in both if one.fields),
    )


def _own_name(name: str, _thing: object) -> Named:
    return Named(name)


def _part_name(name: str, part: Part) -> Named:
    return Named(name, part.kind)


def _head(before: System, after: System, units: Units) -> Iterator[FieldChange]:
    pairs = (
        ("title", before.title, after.title),
        ("units", before.units, after.units),
        ("rules", before.rules, after.rules),
    )
    for name, old, new in pairs:
        if old != new:
            yield FieldChange(name, old or NOT_GIVEN, new or NOT_GIVEN)
    if before.tank_sizes_m3 != after.tank_sizes_m3:
        sizes = (before.tank_sizes_m3 or None, after.tank_sizes_m3 or None)
        yield FieldChange("tank_sizes", *fields_as_written(*sizes, Quantity(VOLUME), units))


def _parts(system: System) -> dict[str, Part]:
    """The parts that have a name of their own; what comes fixed to one is among its fields."""
    return {name: part for name, part in system.parts.items() if "/" not in name}


def _part(before: Part, after: Part, units: Units) -> tuple[FieldChange, ...]:
    kinds = [] if before.kind == after.kind else [FieldChange("kind", before.kind, after.kind)]
    return (*kinds, *field_changes(before, after, units))


def _acceptances(system: System) -> dict[str, Declared]:
    return {one.in_words: one for one in system.accept}


def _pipes(before: System, after: System, units: Units) -> Changes:
    """Pipes by the ports they join, whichever way they are written; of several alike the equal ones cancel first."""
    left, right = _by_ends(before), _by_ends(after)
    added, removed, altered = list[Named](), list[Named](), list[Altered]()
    for ends in dict.fromkeys([*left, *right]):
        old, new = _without_equals(left.get(ends, []), right.get(ends, []))
        for was, now in zip(old, new, strict=False):
            altered.append(Altered(_pipe_name(after, now), tuple(_pipe(was, now, units))))
        removed += [Named(_pipe_name(before, pipe)) for pipe in old[len(new) :]]
        added += [Named(_pipe_name(after, pipe)) for pipe in new[len(old) :]]
    return Changes(tuple(added), tuple(removed), tuple(altered))


def _by_ends(system: System) -> dict[tuple[End, ...], list[Pipe]]:
    found: dict[tuple[End, ...], list[Pipe]] = {}
    for pipe in system.pipes:
        if not any("/" in end.part for end in pipe.ends):
            found.setdefault(tuple(sorted(pipe.ends)), []).append(pipe)
    return found


def _without_equals(before: Sequence[Pipe], after: Iterable[Pipe]) -> tuple[list[Pipe], list[Pipe]]:
    """What is left of each when pipes of the same water, length and tube have cancelled each other."""
    old, new = list(before), list[Pipe]()
    for pipe in after:
        same = next((index for index, other in enumerate(old) if not any(_differing(other, pipe))), None)
        if same is None:
            new.append(pipe)
        else:
            del old[same]
    return old, new


def _differing(before: Pipe, after: Pipe) -> Iterator[str]:
    if before.tube != after.tube:
        yield "pipe"
    if _apart(before.length_m, after.length_m, _ROUNDING_M):
        yield "length"
    if _apart(before.volume_m3, after.volume_m3, _ROUNDING_M3):
        yield "volume"


def _apart(before: float | None, after: float | None, rounding: float) -> bool:
    if before is None or after is None:
        return before is not after
    return abs(before - after) > rounding


def _pipe(before: Pipe, after: Pipe, units: Units) -> Iterator[FieldChange]:
    names = set(_differing(before, after))
    if "pipe" in names:
        yield FieldChange("pipe", before.tube or NOT_GIVEN, after.tube or NOT_GIVEN)
    if "length" in names:
        yield FieldChange("length", *fields_as_written(before.length_m, after.length_m, Quantity(LENGTH), units))
    if "volume" in names:
        yield FieldChange("volume", *fields_as_written(before.volume_m3, after.volume_m3, Quantity(VOLUME), units))


def _pipe_name(system: System, pipe: Pipe) -> str:
    """The pipe as a run would write it: a port is named where a run would not find it by itself."""
    start, end = (system.parts[one.part] for one in pipe.ends)
    return f"{_end(start, pipe.start, start.leaves_at())} -> {_end(end, pipe.end, end.enters_at())}"


def _end(part: Part, end: End, usual: str | None) -> str:
    is_plain = end.port == usual or part.port_names() == (end.port,)
    return end.part if is_plain else f"{end.part}.{end.port}"
