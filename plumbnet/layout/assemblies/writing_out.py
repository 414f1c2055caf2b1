"""Bodies to all parts and chains of the layout, each with its place in the file and the instance that it belongs to."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition, WrittenAt
from plumbnet.layout.assemblies.differing import ELEVATION, Sharing, differs, one_of, taking_of
from plumbnet.layout.assemblies.labels import Labels
from plumbnet.layout.assemblies.run_plan import PlannedChain
from plumbnet.layout.assemblies.told_once import Where
from plumbnet.layout.units import LENGTH, QuantityError, Units, quantity_sum
from plumbnet.layout.yaml import Plain

Height = str | float | None
"""A height as written; None where nothing is said."""


@dataclass(frozen=True, slots=True, eq=False)
class WrittenPart:
    """The values of a part as a plain file would have them; parts that have the same share one.

    `places` says of a field where it stands, if not at `at` under its name.
    """

    kind: Plain
    fields: Mapping[str, Plain]
    at: WrittenAt
    places: Mapping[str, WrittenAt]


@dataclass(frozen=True, slots=True)
class WrittenInstance:
    """An instance: of which assembly, where it was asked for, the height that those inside count from."""

    where: Where
    height: Height


@dataclass(frozen=True, slots=True)
class WrittenChange:
    """An entry of a `change` list, and the instance in which its names are."""

    value: Plain
    at: WrittenAt
    where: Where | None


@dataclass(slots=True)
class WrittenOut:
    """All that a layout comes to; the names of `faulty` parts are there, and nothing more of them."""

    parts: list[tuple[str, WrittenPart, Where | None]] = field(default_factory=list)
    chains: list[tuple[PlannedChain, Where | None]] = field(default_factory=list)
    changes: list[WrittenChange] = field(default_factory=list)
    instances: dict[str, WrittenInstance] = field(default_factory=dict)
    groups: dict[str, Labels] = field(default_factory=dict)
    faulty: set[str] = field(default_factory=set)


@dataclass(frozen=True, slots=True, eq=False)
class _Given:
    """Values that an instance gives a part inside, and where each stands."""

    fields: Mapping[str, Plain]
    places: Mapping[str, WrittenAt]


_Giving = Mapping[str, _Given]
_NOTHING: _Giving = {}


@dataclass(slots=True)
class OutWriter:
    """Writes bodies out; `plans` has the chains of each, by its name."""

    assemblies: Mapping[str, AssemblyBody]
    plans: Mapping[str, Sequence[PlannedChain]]
    units: Units
    out: WrittenOut = field(default_factory=WrittenOut)
    _parts: dict[tuple[int, int, int, Height], WrittenPart] = field(default_factory=dict)
    _giving: dict[tuple[int, int, int], _Giving] = field(default_factory=dict)
    _kept: list[object] = field(default_factory=list)

    def write(self, body: AssemblyBody) -> WrittenOut:
        """The layout itself and all that it asks for."""
        self._body(body, "", None, _NOTHING, None)
        return self.out

    def _body(self, body: AssemblyBody, prefix: str, lift: Height, giving: _Giving, where: Where | None) -> None:
        out = self.out
        for name, definition in body.parts.items():
            given = giving.get(name)
            if definition.labels is not None:
                out.groups[prefix + name] = definition.labels
            for k, label in enumerate(definition.all_labels):
                full = prefix + definition.named(label)
                if definition.faulty:
                    out.faulty.add(full)
                elif definition.use is None:
                    out.parts.append((full, self._part(definition, given, k, lift), where))
                else:
                    self._instance(definition, given, k, full, lift)
        out.chains.extend((chain, where) for chain in self.plans[body.name])
        for index, value in enumerate(body.change):
            out.changes.append(WrittenChange(value, body.at.under("change", index), where))

    def _instance(self, definition: Definition, given: _Given | None, k: int, full: str, lift: Height) -> None:
        assembly = self.assemblies[definition.use or ""]
        own = {**definition.fields, **(given.fields if given else {})}.get("elevation")
        height = _height(height_above(lift, one_of(own, k, ELEVATION, self.units)[0], self.units))
        where = Where(assembly.name, full, definition.at)
        self.out.instances[full] = WrittenInstance(where, height)
        self._body(assembly, f"{full}/", height, self._given(definition, given, k), where)

    def _given(self, definition: Definition, given: _Given | None, k: int) -> _Giving:
        """What an instance gives the parts inside: its own `each`, and over it that of the instance around."""
        further = given.fields.get("each") if given else None
        if not definition.each and not further:
            return _NOTHING
        key = (id(definition), id(given), k)
        if key not in self._giving:
            merged = {name: self._picked(name, definition, fields, k) for name, fields in definition.each.items()}
            for name, fields in (further if isinstance(further, dict) else {}).items():
                if isinstance(fields, dict) and given is not None:
                    before = merged.get(name, _Given({}, {}))
                    places = {own: given.places["each"].under(name, own) for own in fields}
                    merged[name] = _Given(_merged(before.fields, fields), {**before.places, **places})
            self._giving[key] = merged
            self._kept.append(given)
        return self._giving[key]

    def _picked(self, name: str, definition: Definition, fields: Mapping[str, Plain], k: int) -> _Given:
        """The values that one instance gives one part, out of those for all."""
        inside = self.assemblies[definition.use or ""].parts[name]
        found: dict[str, Plain] = {}
        places: dict[str, WrittenAt] = {}
        for key, value in fields.items():
            if key == "each" and isinstance(value, dict):
                found[key] = self._each_inside(inside, value, k)
                places[key] = definition.at.under("each", name, key)
                continue
            found[key], path = one_of(value, k, _taking(inside, key), self.units)
            places[key] = definition.at.under("each", name, key, *path)
        return _Given(found, places)

    def _each_inside(self, inside: Definition, value: Mapping[str, Plain], k: int) -> dict[str, Plain]:
        """An `each` inside an `each` with the values that one instance gives."""
        body = self.assemblies[inside.use or ""]
        found: dict[str, Plain] = {}
        for name, fields in value.items():
            own = fields if isinstance(fields, dict) else {}
            found[name] = {
                key: self._each_inside(body.parts[name], one, k)
                if key == "each" and isinstance(one, dict)
                else one_of(one, k, _taking(body.parts[name], key), self.units)[0]
                for key, one in own.items()
            }
        return found

    def _part(self, definition: Definition, given: _Given | None, k: int, lift: Height) -> WrittenPart:
        fields = definition.fields if given is None else {**definition.fields, **given.fields}
        if not self._differ(definition, fields):
            k = -1
        key = (id(definition), id(given), k, lift)
        found = self._parts.get(key)
        if found is None:
            found = self._parts[key] = self._made(definition, given, fields, max(k, 0), lift)
            self._kept.append(given)
        return found

    @staticmethod
    def _differ(definition: Definition, fields: Mapping[str, Plain]) -> bool:
        """Whether what `times` counts does not have the same values throughout."""
        if definition.labels is None:
            return False
        return any(
            isinstance(one, list | dict) and differs(one, _taking(definition, key)) for key, one in fields.items()
        )

    def _made(
        self, definition: Definition, given: _Given | None, fields: Mapping[str, Plain], k: int, lift: Height
    ) -> WrittenPart:
        places = {} if given is None else dict(given.places)
        made: dict[str, Plain] = {}
        for key, value in fields.items():
            if key == "kind" or definition.labels is None:
                made[key] = value
                continue
            made[key], path = one_of(value, k, _taking(definition, key), self.units)
            if path:
                places[key] = places.get(key, definition.at.under(key)).under(*path)
        height = height_above(lift, made.get("elevation"), self.units)
        if height is not None:
            made["elevation"] = height
        return WrittenPart(made.pop("kind"), made, definition.at, places)


def height_above(lift: Height, own: Plain, units: Units) -> Plain:
    """A height inside an instance, counted from where that stands; one that is none is told of when it is read."""
    if lift is None or isinstance(own, bool | list | dict):
        return own
    if own is None:
        return lift
    try:
        return quantity_sum(lift, own, LENGTH, units)
    except QuantityError:
        return own


def _height(value: Plain) -> Height:
    """What is known to be a height."""
    return value if isinstance(value, str | int | float) else None


def _taking(definition: Definition, field: str) -> Sharing:
    return taking_of(definition.kind, field)


def _merged(before: Mapping[str, Plain], after: Mapping[str, Plain]) -> dict[str, Plain]:
    """Values over others; what both give the parts inside, part by part."""
    merged = {**before, **after}
    one, other = before.get("each"), after.get("each")
    if isinstance(one, dict) and isinstance(other, dict):
        both = {name: (one.get(name), other.get(name)) for name in {**one, **other}}
        merged["each"] = {
            name: _merged(first, second) if isinstance(first, dict) and isinstance(second, dict) else second or first
            for name, (first, second) in both.items()
        }
    return merged
