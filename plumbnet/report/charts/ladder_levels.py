"""A heater to the pressures that its column of a ladder chart bears, each with what is written beside it."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from plumbnet.layout.model import Role
from plumbnet.physics.vessels import BREAKS_PA
from plumbnet.report.prose import MANY_NAMES, names_in_short, reached_through
from plumbnet.report.text import settles
from plumbnet.rules import listed
from plumbnet.rules.facts import Facts, HeaterFacts, RungFacts
from plumbnet.study.margins import StreetBand

MOST_OUTLETS = 6
"""Pressures at which outlets open that a column shows; of the rest it says how many."""
_TOLERANCE_PA = 1.0
"""Outlets that open within one pascal open together."""


class LevelMark(Enum):
    """How a pressure is marked on the column."""

    STATIC = "static"
    LIMIT = "limit"
    OUTLET = "outlet"
    RELIEF = "relief"
    """A safety relief valve: an outlet, and no control."""
    SETTLED = "settled"
    TESTED = "tested"
    """What heaters are tested to."""


@dataclass(frozen=True, slots=True)
class PressureLevel:
    """A pressure, gauge at the heater, and the words beside it; `more` outlets above it are not shown."""

    pressure_pa: float
    mark: LevelMark
    words: str


def levels(facts: Facts, heater: HeaterFacts, band: StreetBand | None = None) -> list[PressureLevel]:
    """The pressures of a heater's column, lowest first: static, outlets, where it settles, the limit.

    With a band, how far the street may stray is said beside the static pressure.
    """
    found = [*_standing(facts, heater, band), *_outlets(facts, heater)]
    return sorted(found, key=lambda level: level.pressure_pa)


def proof(facts: Facts) -> PressureLevel:
    """The pressure to which heaters are tested, 300 psi. Source: common practice."""
    words = f"{facts.pressure(BREAKS_PA)}: heaters are tested to this (common practice)"
    return PressureLevel(BREAKS_PA, LevelMark.TESTED, words)


def _standing(facts: Facts, heater: HeaterFacts, band: StreetBand | None) -> Iterator[PressureLevel]:
    if heater.static_pa is not None:
        words = f"static {facts.pressure(heater.static_pa)}"
        if band is not None:
            words += f" (nothing turns from {facts.pressure(band.low_pa)} to {facts.pressure(band.high_pa)})"
        yield PressureLevel(heater.static_pa, LevelMark.STATIC, words)
    limit = facts.pressure(heater.limit_pa)
    yield PressureLevel(heater.limit_pa, LevelMark.LIMIT, f"limit {limit} ({heater.limit_by}{reached_through(heater)})")
    if heater.settled_pa is not None and settles(heater):
        yield PressureLevel(heater.settled_pa, LevelMark.SETTLED, f"settles at {facts.pressure(heater.settled_pa)}")


def _outlets(facts: Facts, heater: HeaterFacts) -> Iterator[PressureLevel]:
    together = list(_together(heater.ladder))
    shown = together[:MOST_OUTLETS]
    left = sum(len(rungs) for rungs in together[MOST_OUTLETS:])
    for number, rungs in enumerate(shown, 1):
        more = f"; {left} more above" if left and number == len(shown) else ""
        safety = all(rung.role is Role.SAFETY_RELIEF for rung in rungs)
        names = [rung.outlet for rung in rungs]
        named = names_in_short(names) if len(names) >= MANY_NAMES else listed(names)
        words = f"{named} {facts.pressure(rungs[0].opens_pa)}{more}"
        yield PressureLevel(rungs[0].opens_pa, LevelMark.RELIEF if safety else LevelMark.OUTLET, words)


def _together(ladder: tuple[RungFacts, ...]) -> Iterator[list[RungFacts]]:
    """Rungs that open at one pressure; safety relief valves by themselves."""
    group: list[RungFacts] = []
    for rung in ladder:
        if group and not _alike(group[0], rung):
            yield group
            group = []
        group.append(rung)
    if group:
        yield group


def _alike(one: RungFacts, other: RungFacts) -> bool:
    same = abs(one.opens_pa - other.opens_pa) <= _TOLERANCE_PA
    return same and (one.role is Role.SAFETY_RELIEF) == (other.role is Role.SAFETY_RELIEF)
