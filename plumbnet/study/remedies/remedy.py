"""What cures a heater, as it is handed on: a remedy, the remedies of a layout, a layout with one of them made."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import Change
from plumbnet.rules.facts import Verdict
from plumbnet.study.remedies.candidate import Effort

MOST_PARTS = 300
"""Parts up to which remedies are looked for beside every check."""
MOST_WORK = 6000
"""Parts times heaters in trouble up to which they are in larger layouts; more are left to those who ask for them."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """Changes that were made to a copy of the layout, analysed, and found to cure a heater and to break nothing.

    `verdict` and `settled_pa` are the heater's afterwards (gauge at its height; None where nothing holds it).
    `title` is one sentence for the installer, in the report's units. `cures` are all heaters it cures.
    """

    changes: tuple[Change, ...]
    verdict: Verdict
    heater: str
    title: str
    effort: Effort
    settled_pa: float | None
    cures: tuple[str, ...]
    why: str = ""
    """Why there, as what follows "it is"; empty for what has no place of its own."""
    size_m3: float = 0.0
    """Size of the tanks that have to be bought, together."""

    @property
    def rank(self) -> tuple[int, float, int, str]:
        """Sorts remedies by what they ask of the installer, those that buy a tank by its size."""
        return self.effort, self.size_m3, len(self.changes), self.title


Found = Mapping[str, tuple[Remedy, ...]]
"""Remedies by heater, least work first; a heater that needs none is left out."""


@dataclass(frozen=True, slots=True)
class Proposal:
    """A remedy, and the report on the layout with it."""

    remedy: Remedy
    after: Report
