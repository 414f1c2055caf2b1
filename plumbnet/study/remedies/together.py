"""Remedies of heaters that share their water in one list, and what the chosen ones together make of the layout."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Change
from plumbnet.network.graphs import all_reached
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.remedy import Found, Remedy
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.trial import Trial, tried

MOST_TRIED = 8
"""Choices of remedies that are tried together before the search gives up."""


@dataclass(frozen=True, slots=True)
class RemedyList:
    """The remedies of heaters that share their water; those that cure all of them first, then by what they ask."""

    heaters: tuple[str, ...]
    remedies: tuple[Remedy, ...]


@dataclass(frozen=True, slots=True)
class AllTogether:
    """Remedies of several lists, made together to a copy and analysed: they break nothing.

    `cures` are the heaters they cure, `left` those in trouble that they do not.
    """

    chosen: tuple[Remedy, ...]
    changes: tuple[Change, ...]
    cures: tuple[str, ...]
    left: tuple[str, ...]
    after: Report


def remedy_lists(heaters: Iterable[HeaterFacts], found: Found) -> tuple[RemedyList, ...]:
    """One list for all heaters in trouble that share their water, in the order of the file."""
    return tuple(_listed(group, found) for group in _groups(heaters, found))


def _groups(heaters: Iterable[HeaterFacts], found: Found) -> list[tuple[str, ...]]:
    shared = {heater.name: heater.shares_with for heater in heaters}
    groups: list[tuple[str, ...]] = []
    seen: set[str] = set()
    for name in found:
        if name not in seen:
            reached = all_reached([name], shared)
            groups.append(tuple(other for other in found if other in reached))
            seen |= reached
    return groups


def _listed(heaters: tuple[str, ...], found: Found) -> RemedyList:
    each = {_key(one.changes): one for name in reversed(heaters) for one in found[name]}
    in_order = sorted(each.values(), key=lambda one: (not set(heaters) <= set(one.cures), one.rank))
    return RemedyList(heaters, tuple(in_order))


def all_together(report: Report, lists: Sequence[RemedyList]) -> AllTogether | None:
    """A remedy of each list, made together: of the first of each and of those that cure several lists what asks least.

    None where there are not two lists with remedies. Where no choice cures everything, what cures most.
    """
    cured = [one for one in lists if one.remedies]
    if len(cured) < 2:  # noqa: PLR2004  one list is no company
        return None
    scene, best = RemedyContext(report), None
    ailing = [name for one in lists for name in one.heaters]
    for chosen in _choices(cured)[:MOST_TRIED]:
        changes = tuple(_changes(chosen))
        trial = tried(scene, changes)
        if trial is None or not trial.is_faultless:
            continue
        made = _made(chosen, changes, trial, ailing)
        if not made.left:
            return made
        if best is None or len(made.left) < len(best.left):
            best = made
    return best


def _made(chosen: tuple[Remedy, ...], changes: tuple[Change, ...], trial: Trial, ailing: list[str]) -> AllTogether:
    cures = tuple(trial.cures())
    left = tuple(name for name in ailing if name not in cures)
    return AllTogether(chosen, changes, cures, left, trial.after.report)


def _choices(lists: Sequence[RemedyList]) -> list[tuple[Remedy, ...]]:
    """Choices of remedies for all lists, what asks least first: the first of each, and each that cures several."""
    firsts = tuple(one.remedies[0] for one in lists)
    found = [_once(firsts)]
    for remedy in _several(lists):
        rest = (first for first, one in zip(firsts, lists, strict=True) if not set(one.heaters) <= set(remedy.cures))
        found.append(_once([remedy, *rest]))
    each = {tuple(_key(one.changes) for one in chosen): chosen for chosen in found}
    return sorted(each.values(), key=_asks)


def _several(lists: Sequence[RemedyList]) -> Iterator[Remedy]:
    """Remedies that cure every heater of more than one list."""
    for one in lists:
        for remedy in one.remedies:
            if sum(set(other.heaters) <= set(remedy.cures) for other in lists) > 1:
                yield remedy


def _asks(chosen: tuple[Remedy, ...]) -> tuple[int, float, int]:
    """What remedies ask for together: their work, the size of the tanks they buy, how many they are."""
    return sum(one.effort for one in chosen), sum(one.size_m3 for one in chosen), len(chosen)


def _once(chosen: Iterable[Remedy]) -> tuple[Remedy, ...]:
    """Each remedy once, whichever heaters it stands for."""
    return tuple({_key(one.changes): one for one in chosen}.values())


def _changes(chosen: Iterable[Remedy]) -> Iterator[Change]:
    """All changes; one that two remedies make alike only once."""
    seen: set[str] = set()
    for one in chosen:
        for change in one.changes:
            key = _key([change])
            if key not in seen:
                seen.add(key)
                yield change


def _key(changes: Iterable[Change]) -> str:
    return repr([change_fields(change) for change in changes])
