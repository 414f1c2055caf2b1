"""Random layouts of a few parts of every kind, joined in tees, as the text of a file."""

import json
from dataclasses import dataclass

from hypothesis import strategies as st

from oracles.random_fields import Values, fields
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.model.system import System

__all__ = ["ALL", "ELEVATIONS", "HOLDING", "IN_LINE", "Layout", "Values", "layouts"]

HOLDING = {"pipe": "copper-L 3/4 in", "length": "6 m"}
ELEVATIONS = [0, 0, 0, 0, 10, 25, -5]
ALL = tuple(sorted(KINDS))
IN_LINE = ("valve", "valve", "check_valve", "pressure_reducer", "booster_pump", "circulator", "mixing_valve")


@dataclass(frozen=True)
class Layout:
    """Parts by name and pipes as pairs of places; `text` is the file, `system` what reader and changes make of it."""

    parts: dict[str, Values]
    pipes: tuple[str, ...]
    wide: frozenset[str] = frozenset()
    """Those of the pipes that hold water."""
    changes: tuple[Values, ...] = ()

    @property
    def text(self) -> str:
        runs = [{"path": pipe, **HOLDING} if pipe in self.wide else pipe for pipe in self.pipes]
        return json.dumps({"plumbnet": 1, "units": "metric", "parts": self.parts, "runs": runs})

    @property
    def system(self) -> System:
        system = read_system(self.text.encode(), file="random.yaml")
        return with_changes(system, [Change.model_validate(change) for change in self.changes])


@st.composite
def layouts(draw: st.DrawFn, kinds: tuple[str, ...] = ALL, most: int = 10) -> Layout:
    """A main and a heater, up to `most` more parts of `kinds`, each port at one of a few tees or unused.

    Parts that stand in a pipe come thick, for it is they that make hard cases.
    """
    tees = [f"tee{number}" for number in range(draw(st.integers(1, 5)))]
    thick = [kind for kind in IN_LINE if kind in kinds]
    others = draw(st.lists(st.sampled_from(kinds) | st.sampled_from(thick), min_size=1, max_size=most))
    parts: dict[str, Values] = {}
    pipes: list[str] = []
    for number, kind in enumerate(["main", "storage_heater", *others]):
        if kind == "tee":
            pipes += [" -> ".join(ends) for ends in [draw(st.permutations(tees))[:2]] if len(ends) > 1]
            continue
        name, values = f"{kind}{number}", draw(fields(kind))
        parts[name] = {"kind": kind, "elevation": draw(st.sampled_from(ELEVATIONS))} | values
        ports = make_part(kind, values, "metric").port_names()
        free = [port for port in ports if not (port == "relief" and "relief" in values)]
        for index, port in enumerate(free):
            if index == 0 or draw(st.sampled_from([True, True, True, False])):
                pipes.append(f"{draw(st.sampled_from(tees))} -> {name}.{port}")
    used = [tee for tee in tees if any(tee in pipe.split(" -> ") for pipe in pipes)]
    tee: Values = {"kind": "tee"}
    return Layout(dict.fromkeys(used, tee) | parts, tuple(pipes))
