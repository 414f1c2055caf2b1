"""Two layouts to what a revision changed in them: parts, pipes and what stands beside them, in the file's units."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from plumbnet.layout.model import (
    NOT_GIVEN,
    Circuit,
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
from plumbnet.rules import rules_in_words
from plumbnet.study.renaming import Rename, Renames, own_parts, renamed_system, renames

_ROUNDING_M = 1e-9
_ROUNDING_M3 = 1e-12


@dataclass(frozen=True, slots=True)
class Altered:
    """Something that stands in both layouts with other values; a pipe has its `places` among the pipes of each."""

    name: str
    fields: tuple[FieldChange, ...]
    places: tuple[int, ...] = field(default=(), compare=False)


@dataclass(frozen=True, slots=True)
class Named:
    """Something that stands in one of the layouts only; `kind` is that of a part, empty for anything else.

    A pipe has its `places` among the pipes of its layout: one.
    """

    name: str
    kind: str = ""
    places: tuple[int, ...] = field(default=(), compare=False)


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

    `renamed` are the parts that were told by other names before; everything else is told by the names of now. A relief
    valve written inside a heater is one of its fields.
    """

    head: tuple[FieldChange, ...]
    parts: Changes
    pipes: Changes
    scenarios: Changes
    accepted: Changes
    renamed: tuple[Rename, ...] = ()

    def __bool__(self) -> bool:
        """Whether anything at all is different."""
        return bool(self.head or self.parts or self.pipes or self.scenarios or self.accepted or self.renamed)


def revision(before: System, after: System, names: Renames | None = None, *, units: Units | None = None) -> Revision:
    """What differs between two layouts, quantities in `units` or those of the later one; parts come with their kind.

    `names` are the parts that only got another name; where they are left out, they are looked for.
    """
    units = units or after.units
    names = names or renames(before, after)
    before = renamed_system(before, names.name_now) if names.names else before
    return Revision(
        renamed=names.found,
        head=tuple(_head(before, after, units)),
        parts=_changes(own_parts(before), own_parts(after), _part_name, lambda old, new: _part(old, new, units)),
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
        ("rules", _rules(before), _rules(after)),
    )
    for name, old, new in pairs:
        if old != new:
            yield FieldChange(name, old or NOT_GIVEN, new or NOT_GIVEN)
    if before.tank_sizes_m3 != after.tank_sizes_m3:
        sizes = (before.tank_sizes_m3 or None, after.tank_sizes_m3 or None)
        yield FieldChange("tank_sizes", *fields_as_written(*sizes, Quantity(VOLUME), units))


def _rules(system: System) -> str | None:
    """What a file says of its rules, in one line."""
    named = system.rules
    if named is None or isinstance(named, str):
        return named
    return rules_in_words({circuit.value: named[circuit] for circuit in Circuit if circuit in named})


def _part(before: Part, after: Part, units: Units) -> tuple[FieldChange, ...]:
    kinds = [] if before.kind == after.kind else [FieldChange("kind", before.kind, after.kind)]
    return (*kinds, *field_changes(before, after, units))


def _acceptances(system: System) -> dict[str, Declared]:
    return {one.in_words: one for one in system.accept}


@dataclass(frozen=True, slots=True)
class _Placed:
    """A pipe, and its place among those of its layout."""

    pipe: Pipe
    place: int


def _pipes(before: System, after: System, units: Units) -> Changes:
    """Pipes by the ports they join, whichever way they are written; of several alike the equal ones cancel first."""
    left, right = _by_ends(before), _by_ends(after)
    added, removed, altered = list[Named](), list[Named](), list[Altered]()
    for ends in dict.fromkeys([*left, *right]):
        old, new = _without_equals(left.get(ends, []), right.get(ends, []))
        for was, now in zip(old, new, strict=False):
            fields = tuple(_pipe(was.pipe, now.pipe, units))
            altered.append(Altered(_pipe_name(after, now.pipe), fields, (was.place, now.place)))
        removed += [_named(before, one) for one in old[len(new) :]]
        added += [_named(after, one) for one in new[len(old) :]]
    return Changes(tuple(added), tuple(removed), tuple(altered))


def _named(system: System, placed: _Placed) -> Named:
    return Named(_pipe_name(system, placed.pipe), places=(placed.place,))


def _by_ends(system: System) -> dict[tuple[End, ...], list[_Placed]]:
    found: dict[tuple[End, ...], list[_Placed]] = {}
    own = own_parts(system)
    for place, pipe in enumerate(system.pipes):
        if all(end.part in own for end in pipe.ends):
            found.setdefault(tuple(sorted(pipe.ends)), []).append(_Placed(pipe, place))
    return found


def _without_equals(before: Sequence[_Placed], after: Iterable[_Placed]) -> tuple[list[_Placed], list[_Placed]]:
    """What is left of each when pipes of the same water, length and tube have cancelled each other."""
    old, new = list(before), list[_Placed]()
    for one in after:
        same = next((index for index, other in enumerate(old) if not any(_differing(other.pipe, one.pipe))), None)
        if same is None:
            new.append(one)
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
