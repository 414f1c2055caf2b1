"""Where devices stand in pipes that were really built, and in which order: common practice."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

from plumbnet.study.exercise.stock.stretch import Spot

_ANYWHERE = frozenset(Spot) - {Spot.CIRCUIT}
_COLD = frozenset({Spot.SERVICE, Spot.WING, Spot.FEED, Spot.COLD, Spot.YARD})
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
PLACES: Mapping[str, frozenset[Spot]] = MappingProxyType(
    {
        "booster_pump": frozenset({Spot.SERVICE, Spot.WING, Spot.COLD}),
        "check_valve": _COLD | {Spot.BRANCH, Spot.TAP, Spot.RETURN, Spot.HOT},
        "circulator": frozenset({Spot.RETURN}),
        "double_check": _COLD,
        "dual_check": _COLD,
        "filter": frozenset({Spot.SERVICE, Spot.WING, Spot.FEED, Spot.COLD}),
        "heat_trap": frozenset({Spot.FEED, Spot.BRANCH, Spot.HOT}),
        "meter": frozenset({Spot.SERVICE, Spot.YARD}),
        "pressure_reducer": frozenset({Spot.SERVICE, Spot.COLD, Spot.YARD}),
        "reduced_pressure_assembly": frozenset({Spot.SERVICE, Spot.COLD, Spot.YARD}),
        "softener": frozenset({Spot.SERVICE, Spot.WING, Spot.FEED, Spot.COLD}),
        "vacuum_breaker": frozenset({Spot.YARD}),
        "valve": _ANYWHERE,
        "vented_dual_check": frozenset({Spot.SERVICE, Spot.COLD, Spot.YARD}),
    }
)
"""The places of each kind; a kind that is not named stays where it is drawn."""
_MOST = MappingProxyType(
    {
        Spot.SERVICE: 8,
        Spot.WING: 4,
        Spot.FEED: 5,
        Spot.COLD: 3,
        Spot.YARD: 4,
        Spot.BRANCH: 2,
        Spot.HOT: 2,
        Spot.RETURN: 4,
        Spot.CIRCUIT: 4,
    }
)
_MOST_ELSEWHERE = 1
"""Devices and tees in one stretch."""
_TWO_VALVES = frozenset({Spot.SERVICE, Spot.FEED})
_TWO_CHECKS = frozenset({Spot.SERVICE})
_PUMPED = frozenset({Spot.RETURN, Spot.CIRCUIT})
_FIRST = 2
"""Devices that every service begins with: meter and valve."""


def is_usual(place: Spot, kinds: Sequence[str]) -> bool:
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


def _is_in_order(place: Spot, kinds: Sequence[str]) -> bool:
    """A meter at the beginning, a reducer before what it protects, a pump before its check."""
    if place is Spot.SERVICE and sorted(kinds[:_FIRST]) != ["meter", "valve"]:
        return False
    if "meter" in kinds and any(kind != "valve" for kind in kinds[: kinds.index("meter")]):
        return False
    if place in _PUMPED and not _is_before(kinds, "circulator", "check_valve"):
        return False
    return _is_before(kinds, "pressure_reducer", "softener")


def _is_before(kinds: Sequence[str], first: str, second: str) -> bool:
    """Whether the first stands before the second, where both are there."""
    return first not in kinds or second not in kinds or kinds.index(first) < kinds.index(second)
