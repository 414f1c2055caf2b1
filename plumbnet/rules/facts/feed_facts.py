"""What the cold feed of a heater comes to before any check."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FeedFacts:
    """The cold feed of a heater, from the heater up to the first checks.

    `comes_to` is the nearest cold tap or supply that no check parts from it; None where checks stand before them all.
    """

    name: str
    comes_to: str | None
    checks: tuple[str, ...]
    """The checks that it comes to, the nearest first."""
    fed_by: tuple[str, ...] = ()
    """Heaters through which it is fed, with no check between."""
