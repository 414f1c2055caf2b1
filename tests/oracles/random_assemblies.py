"""Random layouts with assemblies beside the same layouts written out by hand: names joined by `--`, heights added."""

import json
from collections.abc import Sequence
from dataclasses import dataclass

from hypothesis import strategies as st

from oracles.random_layouts import HOLDING, Layout, Values, layouts

TIMES: tuple[tuple[object, tuple[str, ...]], ...] = (
    (1, ("1",)),
    (3, ("1", "2", "3")),
    ("08-10", ("08", "09", "10")),
    (["west", "east"], ("west", "east")),
    (["a", "4-5"], ("a", "4", "5")),
)
"""What `times` may say, and the labels that it means."""


@dataclass(frozen=True)
class Pair:
    """One building in both forms, each the text of a file."""

    assembled: str
    plain: str


@st.composite
def assembled_layouts(draw: st.DrawFn) -> Pair:
    """Units of an assembly, or floors of such units, on a header; some bear their own heights."""
    inner = draw(layouts(most=3))
    door = draw(st.sampled_from([name for name, values in inner.parts.items() if values["kind"] == "tee"]))
    assemblies: dict[str, object] = {"unit": _assembly(inner, door)}
    times, labels = draw(st.sampled_from(TIMES))
    lifts = draw(st.lists(st.integers(-5, 20), min_size=len(labels), max_size=len(labels)))
    units: dict[str, object] = {"use": "unit", "times": times, "elevation": lifts}
    copies = [(f"units--{label}", lift) for label, lift in zip(labels, lifts, strict=True)]
    plain = _Plain()
    if not draw(st.booleans()):
        parts: dict[str, object] = {"units": units}
        runs = ["head -> units/each.door"]
        plain.copies(inner, door, copies, "head")
    else:
        floor = {"t": "tee", "units": units}
        assemblies["floor"] = {"ports": ["t"], "parts": floor, "runs": ["t -> units/each.door"]}
        step = draw(st.integers(1, 6))
        parts = {"floors": {"use": "floor", "times": 2, "elevation": {"first": 0, "step": f"{step} m"}}}
        runs = ["head -> floors/first.t", "floors/each.t -> floors/next.t"]
        for k in (0, 1):
            prefix = f"floors--{k + 1}--"
            plain.parts[f"{prefix}t"] = {"kind": "tee", "elevation": k * step}
            higher = [(prefix + name, lift + k * step) for name, lift in copies]
            plain.copies(inner, door, higher, f"{prefix}t")
        plain.runs += ["head -> floors--1--t", "floors--1--t -> floors--2--t"]
    top = {"street": {"kind": "main", "pressure": 400}, "head": "tee"}
    whole: dict[str, object] = {"assemblies": assemblies, "parts": {**top, **parts}, "runs": ["street -> head", *runs]}
    written: dict[str, object] = {"parts": {**top, **plain.parts}, "runs": ["street -> head", *plain.runs]}
    return Pair(_text(whole), _text(written))


class _Plain:
    """Copies of a layout, written out one by one."""

    def __init__(self) -> None:
        self.parts: dict[str, object] = {}
        self.runs: list[object] = []

    def copies(self, inner: Layout, door: str, copies: Sequence[tuple[str, int]], joined: str) -> None:
        for name, lift in copies:
            for part, values in inner.parts.items():
                height = values.get("elevation", 0)
                assert isinstance(height, int)
                self.parts[f"{name}--{part}"] = {**values, "elevation": height + lift}
            for pipe in inner.pipes:
                path = " -> ".join(f"{name}--{stop}" for stop in pipe.split(" -> "))
                self.runs.append({"path": path, **HOLDING} if pipe in inner.wide else path)
            self.runs.append(f"{joined} -> {name}--{door}")


def _assembly(inner: Layout, door: str) -> Values:
    runs = [{"path": pipe, **HOLDING} if pipe in inner.wide else pipe for pipe in inner.pipes]
    return {"ports": {"door": door}, "parts": inner.parts, "runs": runs}


def _text(layout: dict[str, object]) -> str:
    return json.dumps({"plumbnet": 1, "units": "metric", **layout})
