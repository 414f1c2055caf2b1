"""Outlets, and water that has none below its limit."""

from dataclasses import dataclass

from plumbnet.layout.model import End, Role
from plumbnet.rules.facts.verdict_words import Verdict


@dataclass(frozen=True, slots=True)
class OutletFacts:
    """An outlet, and the pressure, gauge at its own height, from which on it takes water of its own zone."""

    name: str
    role: Role
    opens_pa: float


@dataclass(frozen=True, slots=True)
class ShutInFacts:
    """Water that goes either way within itself, and in which growth of `heaters` is not held; the worst `verdict`.

    `ends` are the connections in it. It is one zone, or several that pumps without a check join.
    """

    verdict: Verdict
    heaters: tuple[str, ...]
    ends: frozenset[End]
