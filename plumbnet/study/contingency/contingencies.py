"""A system to every single credible event in it, each as the change that makes it."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from plumbnet.layout.edits import WRITTEN_DIGITS, ChangeError, change_of, with_changes
from plumbnet.layout.model import KINDS, Alternative, Change, Circuit, Extremes, Record, Sort, System
from plumbnet.layout.units import Units, quantity_of, show
from plumbnet.rules import Judging, ruled_by


@dataclass(frozen=True, slots=True)
class Contingency:
    """An event of one part: what happens, in words, and the change that makes it."""

    part: str
    words: str
    change: Change

    @property
    def title(self) -> str:
        """The part and what happens to it."""
        return f"{self.part}: {self.words}"

    @property
    def failure(self) -> str:
        """The event as it is supposed on a command line: its part and its name, as tank:charge_lost."""
        return f"{self.part}:{event_name(self.words)}"


def event_name(words: str) -> str:
    """The words of an event as a name.

    >>> event_name("charge lost"), event_name("exchanged for one with a check")
    ('charge_lost', 'exchanged_for_one_with_a_check')
    """
    return re.sub(r"[^a-z0-9]+", "_", words.lower()).strip("_")


def happenings(
    system: System, judging: Judging, circuit_of: Callable[[str], Circuit] | None = None
) -> tuple[Contingency, ...]:
    """Every single credible event, in the order of the file.

    What can befall a part its kind declares; of that only what can be made here is listed: a heater whose circulation
    pipe has no place on another kind is not exchanged for it. Cost: linear in the parts.
    """
    return tuple(_happenings(system, system.parts, _extremes(judging, circuit_of)))


def events_of_part(
    system: System, name: str, judging: Judging, circuit_of: Callable[[str], Circuit] | None = None
) -> tuple[Contingency, ...]:
    """Every single credible event of one part. Cost: linear in the pipes."""
    return tuple(_happenings(system, [name], _extremes(judging, circuit_of)))


@dataclass(frozen=True, slots=True)
class PartChoice:
    """What a part may be instead: in words, of what sort, and the change that makes it so.

    Of a number the change is to what it is now, and `field` its name in the file; empty of anything else.
    """

    part: str
    words: str
    sort: Sort
    change: Change
    field: str = ""


def choices(
    system: System, judging: Judging, circuit_of: Callable[[str], Circuit] | None = None, units: Units | None = None
) -> tuple[PartChoice, ...]:
    """What each part may be instead, in the order of the file, of that only what can be made here. Linear.

    Quantities are in `units`, or else in those of the file.
    """
    extremes_of, found = _extremes(judging, circuit_of), list[PartChoice]()
    for name, part in system.parts.items():
        alone = _alone(system, name)
        for one in part.alternatives(extremes_of(name)):
            change = _change(one, name, part.kind, units or system.units)
            if _can_be_made(alone, change):
                found.append(PartChoice(name, one.words, one.sort, change, _number_field(one, change)))
    return tuple(found)


def _number_field(one: Alternative, change: Change) -> str:
    return next(iter(change.set.values)) if one.sort is Sort.NUMBER and change.set is not None else ""


def _extremes(judging: Judging, circuit_of: Callable[[str], Circuit] | None) -> Callable[[str], Extremes]:
    rules = ruled_by(judging)

    def extremes_of(name: str) -> Extremes:
        profile = rules.water if circuit_of is None else rules.for_part(circuit_of, name)
        return Extremes(profile.distribution_limit.value_pa, profile.relief_temperature.value_k)

    return extremes_of


def _happenings(system: System, names: Iterable[str], extremes_of: Callable[[str], Extremes]) -> Iterator[Contingency]:
    for name in names:
        part, alone = system.parts[name], _alone(system, name)
        for event in part.events(extremes_of(name)):
            change = _change(event, name, part.kind, system.units)
            if _can_be_made(alone, change):
                yield Contingency(name, event.words, change)


def _alone(system: System, name: str) -> System:
    """One part with what is fixed to it and its own pipes, for to try a change to it on the whole would cost more."""
    own = tuple(system.pipes_at(name))
    near = {end.part for pipe in own for end in pipe.ends} | {name}
    return replace(
        system,
        parts={each: system.parts[each] for each in sorted(near)},
        pipes=own,
        written={name: system.written[name]} if name in system.written else {},
        scenarios={},
        record=Record(),
    )


def _change(one: Alternative, name: str, kind: str, units: Units) -> Change:
    if one.action not in {"fail", "set"}:
        return change_of(one.action, name)
    values = _in_file_units(one.values, str(one.values.get("kind", kind)), units)
    return change_of(one.action, {"part": name, **values})


def _in_file_units(values: Mapping[str, object], kind: str, units: Units) -> dict[str, object]:
    """Values as a file has them: under the names of the file, quantities with their unit."""
    fields = KINDS[kind].model_fields
    found: dict[str, object] = {}
    for name, own in values.items():
        value, field = own, fields.get(name)
        quantity = None if field is None else quantity_of(field)
        if isinstance(value, float) and quantity is not None:
            value = show(value, quantity.dimension, units, WRITTEN_DIGITS)
        found[name if field is None else field.alias or name] = value
    return found


def _can_be_made(system: System, change: Change) -> bool:
    try:
        with_changes(system, [change])
    except ChangeError:
        return False
    return True
