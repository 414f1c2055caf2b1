"""A layout while it is being drawn: parts and pipes to the stock of a family of layouts."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random
from typing import TypeVar

from plumbnet.study.exercise.stock import Spot, Stock, Stretch, neutral_names, renamed
from plumbnet.study.exercise.usual_sizes import RoundNumber, Usual

Choice = TypeVar("Choice")


@dataclass
class Sketch:
    """Parts and runs so far, what is usual where the building stands, and the chance by which they are chosen.

    `line` is the pressure at which the building stands at ground level, `plant` the height of its heaters. All numbers
    are in the units of `usual`. `hangers` are the tees that may stand elsewhere in line, with what hangs on them, and
    where.
    """

    chance: Random
    usual: Usual
    parts: dict[str, dict[str, object]] = field(default_factory=dict)
    stretches: list[Stretch] = field(default_factory=list)
    hangers: dict[str, frozenset[Spot]] = field(default_factory=dict)
    line: int = 0
    plant: RoundNumber = 0

    def pick(self, options: Sequence[Choice]) -> Choice:
        """One of the options."""
        return self.chance.choice(options)

    def likely(self, share: float) -> bool:
        """Whether something happens that happens in a share, from 0 to 1, of all cases."""
        return self.chance.random() < share

    def pressure(self, value: int) -> str:
        """A pressure as a file has it."""
        return f"{value} {self.usual.unit.pressure}"

    def temperature(self, value: int) -> str:
        """A temperature as a file has it."""
        return f"{value} {self.usual.unit.temperature}"

    def volume(self, value: RoundNumber) -> str:
        """A volume as a file has it."""
        return f"{value} {self.usual.unit.volume}"

    def length(self, value: RoundNumber) -> str:
        """A length or a height as a file has it."""
        return f"{value} {self.usual.unit.length}"

    def power(self, value: int) -> str:
        """An input or a capacity as a file has it."""
        return f"{value} {self.usual.unit.power}"

    def part(self, name: str, kind: str, *, height: RoundNumber = 0, **fields: object) -> str:
        """A new part, so high above datum; its name, with a number behind it where that is taken."""
        number, free = 1, name
        while free in self.parts:
            number += 1
            free = f"{name}-{number}"
        raised = {"elevation": self.length(height)} if height else {}
        self.parts[free] = {"kind": kind, **fields, **raised}
        return free

    def hanger(self, *places: Spot) -> str:
        """A tee for something to hang on, that may stand anywhere in these places."""
        tee = self.part("tee", "tee")
        self.hangers[tee] = frozenset(places)
        return tee

    def run(self, *stops: str, place: Spot | None = None, pipe: str = "", length: int = 0) -> None:
        """Join parts in the direction in which water normally flows; without a place it stays as it is drawn."""
        self.stretches.append(Stretch(stops, place, pipe, self.length(length) if pipe else ""))

    def line_at(self, height: RoundNumber) -> int:
        """The pressure that stands at a height, to the nearest whole number."""
        return round(self.line - self.usual.head * height)

    def stock(self, title: str) -> Stock:
        """The list of its parts, under names that do not tell where they stand, and the pipes for them to stand in."""
        drawn = Stock(self.usual, title, self.parts, tuple(self.stretches), self.hangers)
        return renamed(drawn, neutral_names(drawn, self.chance), self.chance)
