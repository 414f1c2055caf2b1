"""Small phrases that several reports share: where a device sits, what a kind is called, a loop, a limit."""

import math
from collections.abc import Sequence

from plumbnet.layout.model import System
from plumbnet.layout.units import TEMPERATURE, TEMPERATURE_DIFFERENCE, TIME, VOLUME, Dimension, Units, show
from plumbnet.physics.vessels import Bracket
from plumbnet.rules import behind, comes_to, history_in_words, listed
from plumbnet.rules.facts import Facts, HeaterFacts, LockedFacts

__all__ = [
    "driven_round",
    "left_as_it_is",
    "limit_in_words",
    "listed",
    "reached_through",
    "settled_in_words",
    "spoken",
    "where",
]


def spoken(kind: str) -> str:
    """A kind with its article.

    >>> spoken("open_tank")
    'an open tank'
    """
    words = kind.replace("_", " ")
    return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


def where(system: System, name: str) -> str:
    """A part with the parts that the pipes at it lead to, as "meter (between street and stop)"."""
    near = [pipe.start.part if pipe.end.part == name else pipe.end.part for pipe in system.pipes_at(name)]
    return f"{name} (between {listed(near)})" if near else name


def limit_in_words(facts: Facts, heater: HeaterFacts) -> str:
    """The limit as it reads at the heater, what sets it, and the way there.

    Where that stands at another height or beyond checks that need some pressure to open, as it reads there, too.
    """
    limit = facts.pressure(heater.limit_pa)
    own = limit if heater.limit_own_pa is None else facts.pressure(heater.limit_own_pa)
    there = "" if own == limit else f": {own} there"
    return f"{limit} ({heater.limit_by}{there}{reached_through(heater)})"


def reached_through(heater: HeaterFacts) -> str:
    """By which one-way devices growth comes to where the limit is set; nothing where it stands in the same water."""
    return f", reached through {listed(heater.limit_way)}" if heater.limit_way else ""


def settled_in_words(facts: Facts, heater: HeaterFacts) -> str:
    """Where a heater's pressure comes to rest, and in which history; of two ends both."""
    history = history_in_words(heater.history) or "when all is hot"
    return behind(comes_to(facts, heater.settled_pa or 0.0, heater.settled_least_pa), history)


def left_as_it_is(facts: Facts, locked: LockedFacts) -> str:
    """What comes of a closed heater if nothing is done, from rigid walls to typical ones."""
    if any(relief.name == locked.outlet and relief.runs for relief in (*facts.reliefs, *facts.expansion_reliefs)):
        return f"{locked.outlet} runs all the time, hot or cold: what feeds it stands above its set"
    soon = _between(locked.rise_k, TEMPERATURE_DIFFERENCE, facts.units)
    if locked.firing_s is not None:
        soon += f", {_between(locked.firing_s, TIME, facts.units)} of firing"
    if locked.outlet is None:
        return f"{facts.pressure(locked.opens_pa)}, to which a heater is tested, is passed once it warms by {soon}"
    text = f"{locked.outlet} opens once it warms by {soon}"
    if locked.discharged_m3 is None:
        return text
    return f"{text}; {_between(locked.discharged_m3, VOLUME, facts.units)} goes to waste at each heat-up"


def _between(bracket: Bracket, dimension: Dimension, units: Units) -> str:
    """Both ends of a bracket, the lower first, to two digits; one where they read the same."""
    low, high = (show(end, dimension, units, 2) for end in sorted((bracket.rigid, bracket.walls)))
    if not math.isfinite(max(bracket.rigid, bracket.walls)):
        return f"{low} or more"
    return low if low == high else f"{low.split()[0]} to {high}"


def tempered(heater: HeaterFacts, units: Units) -> str:
    """How much of what a heater warms a mixing valve keeps cooler, to stand behind its temperature; or nothing."""
    if heater.tempered_k is None:
        return ""
    volume, mixed = show(heater.tempered_m3, VOLUME, units), show(heater.tempered_k, TEMPERATURE, units)
    return f" ({volume} of it to no more than {mixed}, behind a mixing valve)"


def driven_round(loop: Sequence[str]) -> str:
    """A loop, its pump first, and what the water meets on its way round.

    >>> driven_round(["pump", "split", "heater"])
    'pump drives water through split and heater'
    """
    pump, *others = loop
    return f"{pump} drives water through {listed(others)}"
