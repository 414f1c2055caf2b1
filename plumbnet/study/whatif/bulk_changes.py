"""What is supposed of many layouts at once, as changes to each: parts of a kind changed, or fitted with something."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from pydantic import JsonValue, ValidationError

from plumbnet.layout.edits import NO_WAY_THROUGH, ChangeError, change_of, new_name, unknown_kind, with_changes
from plumbnet.layout.model import KINDS, Change, Mistake, Part, System, make_part, mistakes, with_article
from plumbnet.layout.units import Units

_ANY_UNITS: Units = "us"
"""A value is tried in these before there is a file; that it can be read does not hang on them."""
_Values = Mapping[str, JsonValue]


@dataclass(frozen=True, slots=True)
class SetEach:
    """New values for fields of every part of a kind, by their names in the file; null takes one back to the usual."""

    kind: str
    values: _Values

    def fields(self) -> dict[str, object]:
        """It as plain data, to be written down."""
        return {"each": self.kind, "set": dict(self.values)}

    def mistakes(self) -> Iterator[Mistake]:
        """A kind or field that there is not, a value that cannot be read or that the kind cannot do without."""
        if self.kind not in KINDS:
            yield unknown_kind(self.kind)
            return
        wanted = self.values.get("kind", self.kind)
        if wanted is None or not isinstance(wanted, str) or wanted not in KINDS:
            yield unknown_kind(wanted)
            return
        fields = {field.alias: field for field in KINDS[wanted].model_fields.values()}
        for name, value in self.values.items():
            if value is None and name in fields and fields[name].is_required():
                yield Mistake((name,), f"{with_article(wanted)} cannot be without {name}", "give it a value")
        known = {name: value for name, value in self.values.items() if name != "kind"}
        given = {name: value for name, value in known.items() if value is not None or name not in fields}
        for mistake in _mistakes(wanted, given):
            if mistake.path and mistake.path[0] in given:
                yield mistake

    def changes(self, system: System) -> Iterator[Change]:
        """One for every part of the kind; what is written inside another part is set there."""
        for name in _named(system, self.kind):
            owner, inside, field = (name, "", "") if name in system.written else name.rpartition("/")
            values = {field: {**_mapping(system, owner, field), **self.values}} if inside else self.values
            yield change_of("set", {"part": owner, **values})


@dataclass(frozen=True, slots=True)
class FitEach:
    """A new part in every pipe that leaves a part of a kind; `values` are its fields, by their names in the file."""

    kind: str
    fitted: str
    values: _Values

    def fields(self) -> dict[str, object]:
        """It as plain data, to be written down."""
        return {"behind": self.kind, "fit": self.fitted, "with": dict(self.values)}

    def mistakes(self) -> Iterator[Mistake]:
        """A kind that there is not, that no run leaves or that stands in no pipe; a field that is wrong."""
        for kind in (self.kind, self.fitted):
            if kind not in KINDS:
                yield unknown_kind(kind)
                return
        if KINDS[self.kind].outlet is None:
            yield Mistake((), f"nothing can be fitted behind {with_article(self.kind)}: no run leaves it by itself")
        found = list(_mistakes(self.fitted, self.values))
        yield from found
        if not found and not _stands_in_a_pipe(make_part(self.fitted, self.values, _ANY_UNITS)):
            yield Mistake((), f"{with_article(self.fitted)} {NO_WAY_THROUGH}")

    def changes(self, system: System) -> Iterator[Change]:
        """One for every pipe that leaves a part of the kind."""
        taken: tuple[str, ...] = ()
        for name in _named(system, self.kind):
            leaves_at = system.parts[name].leaves_at()
            for pipe in system.pipes:
                for here, there in (pipe.ends, pipe.ends[::-1]):
                    if here == (name, leaves_at):
                        new = new_name(system, name, self.fitted, taken=taken, beside=(there.part,))
                        taken = (*taken, new)
                        between = [f"{end.part}.{end.port}" for end in (here, there)]
                        fields = {"part": new, "kind": self.fitted, "between": between, **self.values}
                        yield change_of("insert", fields)


ToEach: TypeAlias = SetEach | FitEach
"""What is done to every part of a kind. Plain data, so that it can be sent."""


def to_each_of(fields: Mapping[str, JsonValue]) -> ToEach:
    """What was written down as plain data."""
    values = next(value for value in fields.values() if isinstance(value, dict))
    if "each" in fields:
        return SetEach(str(fields["each"]), values)
    return FitEach(str(fields["behind"]), str(fields["fit"]), values)


@dataclass(frozen=True, slots=True)
class Supposed:
    """What is supposed of every layout: a scenario by its name, where the layout has it, and then what is done to each.

    Nothing at all is supposed where both are empty.
    """

    scenario: str | None = None
    to_each: tuple[ToEach, ...] = ()

    def __bool__(self) -> bool:
        return self.scenario is not None or bool(self.to_each)

    def touches(self, system: System) -> tuple[str | None, tuple[Change, ...]]:
        """The scenario of a layout, None where it has none of the name, and the changes to be made after its own.

        Raises ChangeError (layout.edits).
        """
        faulty = system.faulty_scenarios.get(self.scenario or "", ())
        if faulty:
            raise ChangeError(Mistake((), fault.text, fault.hint) for fault in faulty)
        scenario = self.scenario if self.scenario in system.scenarios else None
        if scenario is not None:
            system = with_changes(system, system.changes_of(scenario))
        made: list[Change] = []
        for one in self.to_each:
            new = list(one.changes(system))
            system = with_changes(system, new)
            made += new
        return scenario, tuple(made)


def joined_settings(wanted: Iterable[SetEach]) -> list[SetEach]:
    """The same, all values for one kind set at once, as must be where it becomes a kind that needs them."""
    found: dict[str, SetEach] = {}
    for one in wanted:
        before = found[one.kind].values if one.kind in found else {}
        found[one.kind] = SetEach(one.kind, {**before, **one.values})
    return list(found.values())


def _named(system: System, kind: str) -> list[str]:
    return [name for name, part in system.parts.items() if part.kind == kind]


def _mapping(system: System, owner: str, field: str) -> _Values:
    """What is written in a field of a part that is a mapping."""
    value = system.written.get(owner, {}).get(field)
    return value if isinstance(value, dict) else {}


def _mistakes(kind: str, values: _Values) -> Iterator[Mistake]:
    try:
        make_part(kind, values, _ANY_UNITS)
    except ValidationError as error:
        yield from mistakes(error, what=f"{with_article(kind)}", model=KINDS[kind])


def _stands_in_a_pipe(part: Part) -> bool:
    return part.enters_at() is not None and part.leaves_at() is not None
