"""What cures a heater, as it is handed on: a remedy, the remedies of a layout, a layout with one of them made."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import Change
from plumbnet.layout.yaml import quoted
from plumbnet.rules import listed
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


class FoundRemedies(dict[str, tuple[Remedy, ...]]):
    """The same, with the heaters in trouble of which not every change was tried: the budget had come to its end."""

    left_out: tuple[str, ...] = ()


def left_out(found: Found | None) -> tuple[str, ...]:
    """Heaters in trouble of which not every change was tried, in the order of the file."""
    return found.left_out if isinstance(found, FoundRemedies) else ()


@dataclass(frozen=True, slots=True)
class Proposal:
    """A remedy, and the report on the layout with it."""

    remedy: Remedy
    after: Report


class UnknownRemedy(ValueError):
    """No remedy has this number; the message is a sentence that says which there are."""


def remedy_numbered(found: Found, number: int) -> Remedy:
    """The remedy of a number, as `plumbnet remedies` prints it: each list counts its own from 1.

    `found` are the lists that are meant. Raises UnknownRemedy where there are several, or no such number in the one.
    """
    lists = {heater: own for heater, own in found.items() if own}
    if not lists:
        raise UnknownRemedy("no heater here needs a remedy" if not found else "no remedy was found")
    if len(lists) > 1:
        some = listed(list(map(quoted, lists)))
        raise UnknownRemedy(f"each heater has remedies with numbers of its own; name one of them: {some}")
    ((heater, own),) = lists.items()
    if not 1 <= number <= len(own):
        count = "one remedy, number 1" if len(own) == 1 else f"remedies 1 to {len(own)}"
        raise UnknownRemedy(f"there is no remedy {number} for {heater}; it has {count}")
    return own[number - 1]
