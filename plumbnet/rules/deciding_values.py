"""From what a finding is about to the values of a profile that decide its numbers."""

from collections.abc import Callable, Iterator
from typing import TypeAlias

from plumbnet.rules.facts import Basis, Facts, HeaterFacts
from plumbnet.rules.rule_profile import Profile

Deciding: TypeAlias = Callable[[Facts, Profile, str], Iterator[str]]
"""The names of the values that decide what is said of a part."""


def highest_static(_facts: Facts, profile: Profile, _part: str) -> Iterator[str]:
    """What bounds the pressure with nothing heated."""
    yield "distribution_limit" if profile.static_limit is None else "static_limit"


def holding_outdoors(facts: Facts, _profile: Profile, part: str) -> Iterator[str]:
    """What holds a tap outside the building to that, where a part is one."""
    if any(tap.is_outdoors for tap in facts.taps if tap.name == part):
        yield "outdoor_taps"


def below_relief(facts: Facts, profile: Profile, relief: str) -> Iterator[str]:
    """What keeps the pressure below the set of a safety relief valve: a share of it, or a margin where that is more."""
    for one in facts.reliefs:
        if one.name == relief:
            margin, share = profile.relief_margin, profile.relief_share
            by_margin = margin is not None and one.set_pa - margin.value_pa < share.value * one.set_pa
            yield "relief_margin" if by_margin else "relief_share"


def limit_of_heater(facts: Facts, profile: Profile, heater: str) -> Iterator[str]:
    """What decides the limit to which a finding holds a heater, or the place beyond that it brings too high."""
    for one in facts.heaters:
        if one.name == heater:
            yield from _deciding(facts, profile, heater, *_limit(one))


def limit_pumped_past(facts: Facts, profile: Profile, heater: str) -> Iterator[str]:
    """What decides the limit of the place that a heater pumps up."""
    for one in facts.pumped:
        if one.heaters[0] == heater:
            yield from _deciding(facts, profile, heater, one.basis, one.part)


def _limit(heater: HeaterFacts) -> tuple[Basis, str]:
    """What a limit rests on, and the part that sets it: as a finding tells it, which names the place beyond if any."""
    beyond = [place for place in heater.broken if place.way]
    if len(beyond) == len(heater.broken) > 0 and not heater.is_past_limit:
        return beyond[0].basis, beyond[0].part
    return heater.limit_basis, heater.limit_at


def _deciding(facts: Facts, profile: Profile, heater: str, basis: Basis, part: str) -> Iterator[str]:
    """Nothing where a rating sets the limit, or where it is that of another circuit, which has rules of its own."""
    if part and facts.circuit_of(part) is not facts.circuit_of(heater):
        return
    if basis == "relief":
        yield from below_relief(facts, profile, part)
    elif basis != "rating":
        yield "distribution_limit"
        yield from holding_outdoors(facts, profile, part)
