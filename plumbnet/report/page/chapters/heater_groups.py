"""Heaters to groups of which one story is true: those that share their water, or stand alike in alike instances."""

from collections.abc import Callable, Hashable, Iterable
from dataclasses import replace

from plumbnet.report.prose import lists_in_short
from plumbnet.report.text import story
from plumbnet.rules.facts import Facts, HeaterFacts

_ITSELF, _ITS_INSTANCE = "\x00", "\x01/"
"""Stand in a story for what is a heater's own: its name, and what the names of the parts beside it begin with."""


def alike_heaters(facts: Facts) -> list[list[HeaterFacts]]:
    """The heaters in groups, in the order of the first of each; in one group all that is told of each is the same.

    The names of the heater, of its instance, and of those with which it shares its water apart.
    """
    same = _grouped(([heater] for heater in facts.heaters), lambda heater: _look(facts, heater))
    return _grouped(same, lambda heater: _look_less_own(facts, heater))


def _grouped(groups: Iterable[list[HeaterFacts]], look: Callable[[HeaterFacts], Hashable]) -> list[list[HeaterFacts]]:
    """The same heaters with groups joined whose first look alike; one that is a group already stays as it is."""
    found: dict[Hashable, list[HeaterFacts]] = {}
    for number, group in enumerate(groups):
        found.setdefault(look(group[0]) if len(group) == 1 else number, []).extend(group)
    return list(found.values())


def _look(facts: Facts, heater: HeaterFacts) -> tuple[Hashable, ...]:
    """All that is told of a heater, less those with which it shares its water, which are the same for all of them."""
    sharing = frozenset([heater.name, *heater.shares_with]) if heater.shares_with else frozenset()
    told = story(facts, replace(heater, shares_with=()))
    short = tuple((label, lists_in_short(text, facts.system.parts)) for label, text in told)
    return heater.kind, heater.verdict, sharing, short


def _look_less_own(facts: Facts, heater: HeaterFacts) -> Hashable:
    *what, told = _look(facts, heater)
    return *what, repr(told).replace(heater.name, _ITSELF).replace(_instance(heater), _ITS_INSTANCE)


def _instance(heater: HeaterFacts) -> str:
    """What the names of the parts begin with that stand in one instance with a heater; else nothing that is a name."""
    return heater.name.rpartition("/")[0] + "/" if "/" in heater.name else _ITS_INSTANCE
