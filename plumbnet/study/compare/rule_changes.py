"""Two reports to what differs between the rules that they were judged by."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import Circuit, FieldChange, field_changes
from plumbnet.layout.units import Units
from plumbnet.rules import Profile

_WHERE_IT_STANDS = ("clause", "verified")
"""Fields of a ruling that say where it stands and ask for nothing."""


@dataclass(frozen=True, slots=True)
class RuleChange:
    """Rules that are not those of before: another profile, or one of that name with other values.

    `circuit` names the water that they are for; empty where one profile judges all. `values` are what they ask, as a
    profile's file would write it; `clauses` counts what they rest on elsewhere.
    """

    circuit: str
    before: Profile
    after: Profile
    values: tuple[FieldChange, ...]
    clauses: int

    @property
    def is_other_profile(self) -> bool:
        """Whether the rules have another name."""
        return self.before.profile != self.after.profile


def rule_changes(before: Report, after: Report) -> tuple[RuleChange, ...]:
    """The rules that changed, circuit by circuit in the order of the later report; quantities in its units."""
    was, now, units = before.rules, after.rules, after.facts.units
    if was.is_one and now.is_one:
        pairs = [("", was.water, now.water)]
    else:
        pairs = [(circuit.value, was.of(circuit), now.of(circuit)) for circuit in Circuit]
    return tuple(_change(name, old, new, units) for name, old, new in pairs if old.sha256 != new.sha256)


def _change(circuit: str, before: Profile, after: Profile, units: Units) -> RuleChange:
    found = [one for one in _values(before, after, units) if one.field not in _ABOUT_ITSELF]
    values = tuple(one for one in found if one.field.rpartition(".")[2] not in _WHERE_IT_STANDS)
    clauses = sum(one.field.endswith(".clause") for one in found)
    return RuleChange(circuit, before, after, values, clauses)


_ABOUT_ITSELF = frozenset({"profile", "title", "note", "extends", "findings", "site"})
"""What a profile says of itself, what is compared finding by finding, and what no layout can tell."""


def _values(before: Profile, after: Profile, units: Units) -> Iterator[FieldChange]:
    yield from field_changes(before, after, units)
    for name in dict.fromkeys([*before.findings, *after.findings]):
        for one in field_changes(before.findings.get(name), after.findings.get(name), units):
            yield FieldChange(f"{name}.{one.field}", one.before, one.after)
