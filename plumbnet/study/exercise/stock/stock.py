"""A list of parts and the pipes for them to stand in, and the file of a layout that is made of them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import yaml

from plumbnet.study.exercise.stock.stretch import Spot, Stretch
from plumbnet.study.exercise.usual_sizes import Usual

_NO_WRAP = 1 << 20
_DUMPER: type[yaml.SafeDumper] = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


@dataclass(frozen=True)
class Stock:
    """Parts with their fields, in the order of the file, and the stretches in which they were drawn.

    `hangers` are the tees that may stand anywhere in some places, each with what hangs on it.
    """

    usual: Usual
    title: str
    parts: Mapping[str, Mapping[str, object]]
    stretches: tuple[Stretch, ...]
    hangers: Mapping[str, frozenset[Spot]]

    def kind(self, name: str) -> str:
        """The kind of a part."""
        return str(self.parts[name]["kind"])

    def text(self, stretches: Sequence[Stretch]) -> str:
        """The parts in such stretches as a file."""
        units = "" if self.usual.units == "us" else f"units: {self.usual.units}\n"
        head = f"# Made for training; {self.title} is invented.\nplumbnet: 1\ntitle: {_inline(self.title)}\n{units}"
        runs = "".join(f"  - {_inline(stretch.written())}\n" for stretch in stretches)
        return f"{head}\nparts:\n{self._parts}\nruns:\n{runs}"

    @cached_property
    def _parts(self) -> str:
        """The list as a file has it, the same in whichever stretches its parts stand."""
        written = {name: fields if len(fields) > 1 else fields["kind"] for name, fields in self.parts.items()}
        return "".join(f"  {name}: {_inline(fields)}\n" for name, fields in written.items())


def _inline(value: object) -> str:
    text: str = yaml.dump([value], Dumper=_DUMPER, default_flow_style=True, sort_keys=False, width=_NO_WRAP)
    return text.strip()[1:-1]
