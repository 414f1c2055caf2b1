"""How high a zone may stand, and the places that come above their limits."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

ROUNDING_PA = 1.0
"""Pressures are compared to one pascal, finer than any gauge and coarser than the rounding of unit conversion."""
Basis: TypeAlias = Literal["fixture", "rating", "relief", "set", "profile"]
"""What a limit rests on: people drawing water, a part's rating, a relief valve's set, the profile alone."""


@dataclass(frozen=True, slots=True)
class Limit:
    """The highest pressure a zone may reach, gauge at datum, and what sets it; `own_pa` as it reads there.

    `part` is the fixture, the rated part or the relief valve that sets it; empty where nothing does. Where it stands
    beyond one-way devices, `way` are those that water passes on its way there.
    """

    pressure_pa: float
    by: str
    own_pa: float | None = None
    part: str = ""
    basis: Basis = "profile"
    way: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlaceFacts:
    """A place that comes above its own limit; pressures gauge at its own height.

    `part` sets the limit `limit_pa`, `way` are the one-way devices past which growth comes there. No history brings it
    above `highest_pa`; `history` brings it to `reached_pa`, by the heaters that warm, stage by stage.
    """

    part: str
    by: str
    limit_pa: float
    highest_pa: float
    reached_pa: float
    way: tuple[str, ...]
    history: tuple[tuple[str, ...], ...]
    basis: Basis = "profile"


@dataclass(frozen=True, slots=True)
class TapFacts:
    """A place where people draw water, and the highest that stands at it with nothing running (None: no water)."""

    name: str
    static_pa: float | None
    is_outdoors: bool = False
    """Whether it is a hose bibb or a hydrant."""
