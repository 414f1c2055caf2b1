"""A layout while it is being drawn: parts and runs to the text of a file."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random
from typing import TypeVar

import yaml

from plumbnet.study.exercise.usual import PSI_PER_FT

Choice = TypeVar("Choice")
_NO_WRAP = 1 << 20
_DUMPER: type[yaml.SafeDumper] = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


@dataclass
class Sketch:
    """Parts and runs so far, and the chance by which they are chosen.

    `line_psi` is the pressure at which the building stands at ground level, `plant_ft` the height of its heaters.
    """

    chance: Random
    parts: dict[str, object] = field(default_factory=dict)
    runs: list[object] = field(default_factory=list)
    line_psi: int = 0
    plant_ft: int = 0

    def pick(self, options: Sequence[Choice]) -> Choice:
        """One of the options."""
        return self.chance.choice(options)

    def likely(self, share: float) -> bool:
        """Whether something happens that happens in a share, from 0 to 1, of all cases."""
        return self.chance.random() < share

    def part(self, name: str, kind: str, *, height_ft: int = 0, **fields: object) -> str:
        """A new part, `height_ft` above datum; its name, with a number behind it where that is taken."""
        number, free = 1, name
        while free in self.parts:
            number += 1
            free = f"{name}-{number}"
        height = {"elevation": f"{height_ft} ft"} if height_ft else {}
        given = {**fields, **height}
        self.parts[free] = {"kind": kind, **given} if given else kind
        return free

    def run(self, *stops: str, pipe: str = "", length_ft: int = 0) -> None:
        """Join parts in the direction in which water normally flows."""
        path = " -> ".join(stops)
        self.runs.append({"path": path, "pipe": pipe, "length": f"{length_ft} ft"} if pipe else path)

    def line_at_psi(self, height_ft: int) -> int:
        """The pressure that stands at a height, to the nearest psi."""
        return round(self.line_psi - PSI_PER_FT * height_ft)

    def text(self, title: str) -> str:
        """The layout as a file."""
        head = f"# Made for training; {title} is invented.\nplumbnet: 1\ntitle: {_inline(title)}\n"
        parts = "".join(f"  {name}: {_inline(fields)}\n" for name, fields in self.parts.items())
        runs = "".join(f"  - {_inline(run)}\n" for run in self.runs)
        return f"{head}\nparts:\n{parts}\nruns:\n{runs}"


def _inline(value: object) -> str:
    text: str = yaml.dump([value], Dumper=_DUMPER, default_flow_style=True, sort_keys=False, width=_NO_WRAP)
    return text.strip()[1:-1]
