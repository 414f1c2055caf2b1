"""Findings that instances of an assembly have alike, told together: `houses/1, 2, 4-6: tank has lost its air`."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from plumbnet.layout.model import System
from plumbnet.rules import Finding

_A_RANGE = 3
"""So many that follow each other are written as a range."""
_MOST_NAMED = 4
"""So many groups of instances are named; the rest are only counted."""


@dataclass(frozen=True, slots=True)
class EqualFindings:
    """Findings that differ only in the instance they are about; `instances` names them, "" where there is only one."""

    findings: tuple[Finding, ...]
    instances: str = ""
    prefix: str = ""

    def within(self, text: str) -> str:
        """What is said of the first, in the words of the assembly."""
        return text.replace(self.prefix, "") if self.instances else text


def equal_findings(found: Sequence[Finding], system: System, apart: Collection[Finding] = ()) -> list[EqualFindings]:
    """Findings in their order, equal ones of several instances as one; those `apart` each by itself."""
    groups: dict[object, list[Finding]] = {}
    for index, one in enumerate(found):
        prefix = _prefix(one, system)
        key: object = index if not prefix or one in apart else _without(one, prefix)
        groups.setdefault(key, []).append(one)
    return [_together(group, system) for group in groups.values()]


def _prefix(one: Finding, system: System) -> str:
    around = system.instance_around(one.parts[0]) if one.parts else None
    return "" if around is None else f"{around}/"


def _without(one: Finding, prefix: str) -> object:
    parts = tuple(part.removeprefix(prefix) for part in one.parts)
    return one.name, one.severity, one.line, parts, one.text.replace(prefix, ""), one.advice.replace(prefix, "")


def _together(group: list[Finding], system: System) -> EqualFindings:
    if len(group) == 1:
        return EqualFindings(tuple(group))
    names = [_prefix(one, system).removesuffix("/") for one in group]
    return EqualFindings(tuple(group), instances_in_short(names, system.groups), f"{names[0]}/")


def instances_in_short(names: Sequence[str], groups: Mapping[str, Sequence[str]]) -> str:
    """Instances by their names, those of one group together and those that follow each other as a range.

    >>> instances_in_short([f"houses/{k}" for k in (1, 2, 4, 5, 6)], {"houses": [*"12345678"]})
    'houses/1, 2, 4-6'
    """
    labels: dict[str, list[str]] = {}
    for name in dict.fromkeys(names):
        group, _, label = name.rpartition("/")
        labels.setdefault(group if group in groups else name, []).append(label)
    told = [_of_group(group, own, groups.get(group, ())) for group, own in labels.items()]
    more = len(told) - _MOST_NAMED
    return "; ".join([*told[:_MOST_NAMED], *([f"and {more} more groups"] if more > 0 else [])])


def _of_group(group: str, labels: Sequence[str], known: Sequence[str]) -> str:
    return f"{group}/{', '.join(_ranges(labels, known))}" if known else group


def _ranges(labels: Sequence[str], known: Sequence[str]) -> Iterator[str]:
    """Labels, those that follow each other in the order of the file as a range."""
    chain: list[str] = []
    place = {label: at for at, label in enumerate(known)}
    for label in sorted(labels, key=place.__getitem__):
        if chain and place[label] != place[chain[-1]] + 1:
            yield from _written(chain)
            chain = []
        chain.append(label)
    yield from _written(chain)


def _written(chain: Sequence[str]) -> Sequence[str]:
    return [f"{chain[0]}-{chain[-1]}"] if len(chain) >= _A_RANGE else chain
