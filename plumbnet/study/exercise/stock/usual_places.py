"""Where devices stand in pipes that were really built, and in which order: common practice."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

from plumbnet.study.exercise.stock.stretch import Place

_ANYWHERE = frozenset(Place)
_COLD = frozenset({Place.SERVICE, Place.WING, Place.FEED, Place.COLD, Place.YARD})
CHECKS = frozenset(
    {
        "booster_pump",
        "check_valve",
        "double_check",
        "dual_check",
        "reduced_pressure_assembly",
        "vacuum_breaker",
        "vented_dual_check",
    }
)
"""Kinds that let no water back."""
PLACES: Mapping[str, frozenset[Place]] = MappingProxyType(
    {
        "booster_pump": frozenset({Place.SERVICE, Place.WING, Place.COLD}),
        "check_valve": _COLD | {Place.BRANCH, Place.TAP, Place.RETURN},
        "circulator": frozenset({Place.RETURN}),
        "double_check": _COLD,
        "dual_check": _COLD,
        "filter": frozenset({Place.SERVICE, Place.WING, Place.FEED, Place.COLD}),
        "heat_trap": frozenset({Place.FEED, Place.BRANCH, Place.HOT}),
        "meter": frozenset({Place.SERVICE, Place.YARD}),
        "pressure_reducer": frozenset({Place.SERVICE, Place.COLD, Place.YARD}),
        "reduced_pressure_assembly": frozenset({Place.SERVICE, Place.COLD, Place.YARD}),
        "softener": frozenset({Place.SERVICE, Place.WING, Place.FEED, Place.COLD}),
        "vacuum_breaker": frozenset({Place.YARD}),
        "valve": _ANYWHERE,
        "vented_dual_check": frozenset({Place.SERVICE, Place.COLD, Place.YARD}),
    }
)
"""The places of each kind; a kind that is not named stays where it is drawn."""
_MOST = MappingProxyType(
    {
        Place.SERVICE: 8,
        Place.WING: 4,
        Place.FEED: 5,
        Place.COLD: 3,
        Place.YARD: 4,
        Place.BRANCH: 2,
        Place.HOT: 2,
        Place.RETURN: 4,
    }
)
_MOST_ELSEWHERE = 1
"""Devices and tees in one stretch."""
_TWO_VALVES = frozenset({Place.SERVICE, Place.FEED})
_TWO_CHECKS = frozenset({Place.SERVICE})
_FIRST = 2
"""Devices that every service begins with: meter and valve."""


def is_usual(place: Place, kinds: Sequence[str]) -> bool:
    """Whether devices of these kinds, in the direction of flow, would pass as something that was really built."""
    checks = sum(kind in CHECKS for kind in kinds)
    return (
        len(kinds) <= _MOST.get(place, _MOST_ELSEWHERE)
        and kinds.count("valve") <= 1 + (place in _TWO_VALVES)
        and checks <= 1 + (place in _TWO_CHECKS)
        and max(map(kinds.count, ("meter", "pressure_reducer", "softener", "filter"))) <= 1
        and not any(_clash(one, other) for one, other in pairwise(kinds))
        and _is_in_order(place, kinds)
    )


def _clash(one: str, other: str) -> bool:
    """Whether two devices side by side are one too many."""
    return (one == other == "valve") or (one in CHECKS and other in CHECKS)


def _is_in_order(place: Place, kinds: Sequence[str]) -> bool:
    """A meter at the beginning, a reducer before what it protects, a pump before its check."""
    if place is Place.SERVICE and sorted(kinds[:_FIRST]) != ["meter", "valve"]:
        return False
    if "meter" in kinds and any(kind != "valve" for kind in kinds[: kinds.index("meter")]):
        return False
    if place is Place.RETURN and not _is_before(kinds, "circulator", "check_valve"):
        return False
    return _is_before(kinds, "pressure_reducer", "softener")


def _is_before(kinds: Sequence[str], first: str, second: str) -> bool:
    """Whether the first stands before the second, where both are there."""
    return first not in kinds or second not in kinds or kinds.index(first) < kinds.index(second)
