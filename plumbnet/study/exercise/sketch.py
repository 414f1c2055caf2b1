"""A layout while it is being drawn: parts and runs to the text of a file."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random
from typing import TypeVar

import yaml

from plumbnet.study.exercise.usual_sizes import RoundNumber, Usual

Choice = TypeVar("Choice")
_NO_WRAP = 1 << 20
_DUMPER: type[yaml.SafeDumper] = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


@dataclass
class Sketch:
    """Parts and runs so far, what is usual where the building stands, and the chance by which they are chosen.

    `line` is the pressure at which the building stands at ground level, `plant` the height of its heaters. All numbers
    are in the units of `usual`.
    """

    chance: Random
    usual: Usual
    parts: dict[str, object] = field(default_factory=dict)
    runs: list[object] = field(default_factory=list)
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
        given = {**fields, "elevation": self.length(height)} if height else fields
        self.parts[free] = {"kind": kind, **given} if given else kind
        return free

    def run(self, *stops: str, pipe: str = "", length: int = 0) -> None:
        """Join parts in the direction in which water normally flows."""
        path = " -> ".join(stops)
        self.runs.append({"path": path, "pipe": pipe, "length": self.length(length)} if pipe else path)

    def line_at(self, height: RoundNumber) -> int:
        """The pressure that stands at a height, to the nearest whole number."""
        return round(self.line - self.usual.head * height)

    def text(self, title: str) -> str:
        """The layout as a file."""
        units = "" if self.usual.units == "us" else f"units: {self.usual.units}\n"
        head = f"# Made for training; {title} is invented.\nplumbnet: 1\ntitle: {_inline(title)}\n{units}"
        parts = "".join(f"  {name}: {_inline(fields)}\n" for name, fields in self.parts.items())
        runs = "".join(f"  - {_inline(run)}\n" for run in self.runs)
        return f"{head}\nparts:\n{parts}\nruns:\n{runs}"


def _inline(value: object) -> str:
    text: str = yaml.dump([value], Dumper=_DUMPER, default_flow_style=True, sort_keys=False, width=_NO_WRAP)
    return text.strip()[1:-1]
