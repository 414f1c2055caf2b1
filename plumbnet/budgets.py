"""What may be spent on questions that can cost far more than a layout is large: one place for all such budgets.

Work is counted in steps of some twenty microseconds and never by the clock, so that the same layout always has the same
answer. Whoever comes to the end of a budget says in the answer what was left out.
"""

import math
from dataclasses import dataclass

PART_STEPS = 10
"""What a part counts for wherever a layout is analysed again."""
RUNG_STEPS = 20
"""What a rung of a heater's ladder counts for beside its parts there."""
REMEDIES_BESIDE_CHECK = 400_000
"""Steps for the remedies of a layout beside its check: forty thousand parts analysed again."""
REMEDIES_ASKED_FOR = 1_000_000
"""Steps where remedies are what was asked for."""
PLANS = 500_000
"""Steps for the fewest tanks that would serve all."""
TANK_SIZES = 400_000
"""Steps for the sizes of the tanks that heaters want which push into each other's water."""
MOST_NARROWED = 5
"""Heated zones that push into the same water whose ceilings are narrowed in rounds, however they are joined.

Of more, each is held against all, unless hardly any pushes into another.
"""
MOST_PAIRS = 10
"""Pairs of heated zones, one of which pushes into the other, as five in a row have: up to so many ceilings of as many
zones as are levelled are narrowed all the same."""
MOST_LEVELLED = 24
"""Of more than so many no ceiling is sought below what the first outlet lets go at."""
LOOPS = 100_000
"""Steps for the loops of pumps; of one that comes after, all that could go round with it counts as its loop."""
ORDERS = 2_000
"""Zones lifted in the orders of heating that are played for one company of heated zones; one order at least."""
MOST_COUPLED = 500
"""Heated zones that push into the same water; of a building in which there are more nothing is computed."""
MOST_WARMED = 2_000_000
"""Pieces of warmed water, each counted for every heater that warms it; of a building with more nothing is computed."""
MOST_BROKEN = 100
"""Places above their limits that are sought for a heater, the nearest; whether there are more is told."""
MARGINS_BESIDE_PAGE = 1_500_000
"""Steps for the margins beside a page or a sheet."""
PUMPED = 100_000
"""Zones lifted by the heat-ups that are played until they pump a place past its limit; one heat-up at least."""


def analysis_steps(parts: int, rungs: int, searched: int) -> int:
    """What a layout that is analysed again counts for: its parts, the rungs of all ladders, and steps searched in it.

    >>> analysis_steps(parts=20, rungs=4, searched=100)
    380
    """
    return PART_STEPS * parts + RUNG_STEPS * rungs + searched


class Spent(Exception):
    """A budget has come to its end."""


@dataclass
class Budget:
    """Steps that may be spent on a question, and those that were; without an end where `most` is infinite."""

    most: float = math.inf
    within: "Budget | None" = None
    """One that counts these steps as well."""
    spent: int = 0

    @property
    def is_spent(self) -> bool:
        """Whether nothing is left."""
        return self.spent >= self.most

    def demand(self) -> None:
        """Raise Spent where nothing is left.

        >>> budget = Budget(most=5)
        >>> budget.spend(5)
        >>> budget.is_spent
        True
        """
        if self.is_spent:
            raise Spent

    def spend(self, steps: int) -> None:
        """Count steps that were taken; the last may go past the end."""
        self.spent += steps
        if self.within is not None:
            self.within.spend(steps)
