"""Stores of hot water: how hot, how high above what they serve, and how air comes to them."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class StoreFacts:
    """A store of hot water, heated in it or elsewhere; heights above the datum of the layout.

    `setpoint_k` is None where it is heated elsewhere. `passes_k` is the highest setpoint of a store that all the water
    passes which is drawn from it, its own among them; None where nobody draws. `tap` is the lowest that it serves, None
    where it serves none. `is_electric` and `is_fed_from_below` are None where the file does not say.
    """

    name: str
    setpoint_k: float | None
    is_electric: bool | None
    passes_k: float | None
    elevation_m: float
    tap: str | None
    tap_m: float
    is_height_given: bool
    """Whether a height is written for it or for any tap."""
    is_fed_from_below: bool | None
    air_comes_by: tuple[str, ...]
    """Vacuum relief valves that only pipes and fittings join to it, and vents with no valve or check between."""
