"""What becomes of a heater's expansion, in the five words that are promised."""

from enum import StrEnum


class Verdict(StrEnum):
    """What becomes of a heater's expansion. The words are a promise."""

    OPEN = "open"
    """A way to the main or to open air opens at or below the limit, or the static pressure where that is higher."""
    CONTROLLED = "controlled"
    """Closed, and the control fitted keeps the pressure at or below the limit at full temperature."""
    TRAPPED = "trapped"
    """Closed, and the pressure passes the limit; the safety relief valve is all that stands behind it."""
    SEALED = "sealed"
    """Trapped, and not even a relief valve can be reached."""
    ON_DEMAND = "on-demand"
    """Closed, but the heater fires only while water is drawn and sits in no driven loop."""


FROM_BEST_TO_WORST = (Verdict.OPEN, Verdict.ON_DEMAND, Verdict.CONTROLLED, Verdict.TRAPPED, Verdict.SEALED)
"""Verdicts in order, the last being that of the greatest danger."""
TROUBLED = frozenset({Verdict.TRAPPED, Verdict.SEALED})
"""Verdicts under which a heater's expansion is not held."""
