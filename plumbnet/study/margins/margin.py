"""What is told of a number: how far it may stray before something turns, and what turns then."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout import shown
from plumbnet.layout.units import PRESSURE, Dimension
from plumbnet.study.contingency import Error, Outcome


@dataclass(frozen=True, slots=True)
class UncertainNumber:
    """A number of a part: its field by the name in the file, what was said, and between what it was tried; all SI.

    `together` is that of its kind. `accuracy` is what it can be read to on site; None where no gauge reads it.
    """

    part: str
    field: str
    dimension: Dimension
    told: float
    lowest: float
    highest: float
    together: bool = False
    accuracy: float | None = None

    @property
    def is_pressure(self) -> bool:
        """Whether it is a pressure, gauge at its part."""
        return self.dimension is PRESSURE


@dataclass(frozen=True, slots=True)
class Turning:
    """The nearest turn on one side of a number, both values tried: all is as before at `holds_to`, not at `turns_at`.

    `outcome` are the verdicts that are others there and the errors that are new, `gone` the errors that are no more.
    `turns_back` says that far beyond, at the end of what was tried, all is as before again.
    """

    holds_to: float
    turns_at: float
    outcome: Outcome
    gone: tuple[Error, ...] = ()
    turns_back: bool = False


@dataclass(frozen=True, slots=True)
class Margin:
    """How far a number may stray, the others as they are; None where nothing turns as far as was tried."""

    number: UncertainNumber
    below: Turning | None = None
    above: Turning | None = None

    @property
    def is_free(self) -> bool:
        """Whether nothing turns on either side."""
        return self.below is None and self.above is None

    @property
    def least(self) -> float | None:
        """The distance to the nearer turn, SI; None where there is none."""
        turns = (one for one in (self.below, self.above) if one is not None)
        return min((abs(one.turns_at - self.number.told) for one in turns), default=None)

    @property
    def is_within_accuracy(self) -> bool:
        """Whether something turns nearer than the number can be read on site."""
        least, accuracy = self.least, self.number.accuracy
        return least is not None and accuracy is not None and least <= accuracy


@dataclass(frozen=True, slots=True)
class CureMargins:
    """A heater, its first remedy in a sentence, and how far charges, sets and supplies may stray once it is made."""

    heater: str
    title: str
    numbers: tuple[Margin, ...]


@dataclass(frozen=True, slots=True)
class Margins:
    """The margins of a layout, in the order of the file; `heater` is the only one looked at, None for all.

    `checks` counts the layouts that were analysed for them. `cures` are those of the layout with the first remedy of
    each heater in trouble.
    """

    report: Report
    heater: str | None
    numbers: tuple[Margin, ...]
    checks: int
    cures: tuple[CureMargins, ...] = ()

    def to_text(self) -> str:
        """What `plumbnet margins` prints of it; ends with a line break."""
        return shown(self, "text", str)
