"""A heater is open by bypasses alone if, and only if, it is open no more once no reducer has one."""

import json
from dataclasses import replace

from conftest import Drawn, times
from hypothesis import given
from hypothesis import strategies as st

from oracles.random_layouts import ALL, Layout, layouts
from plumbnet.layout.model.system import System

EXAMPLES = times(0.6)
ONE_SUPPLY = tuple(
    kind for kind in ALL if kind not in {"main", "well", "open_tank", "filling_loop", "booster_pump", "vent"}
)
"""One main and nothing that lifts: no pressure stands anywhere that a bypass could carry back."""


@st.composite
def reduced(draw: st.DrawFn) -> Layout:
    """A random layout whose main stands behind a reducer, and now and then beside a pipe or a check past it."""
    layout = draw(layouts(kinds=ONE_SUPPLY, most=8))
    parts, pipes = dict(layout.parts), list(layout.pipes)
    main = next(pipe for pipe in pipes if pipe.endswith(" main0.out"))
    tee = main.partition(" -> ")[0]
    pipes.remove(main)
    parts["before"] = {"kind": "tee"}
    pipes += ["main0.out -> before"]
    for number in range(draw(st.integers(1, 2))):
        values = {"set": draw(st.sampled_from([150, 250])), "bypass": draw(st.sampled_from([True, True, False]))}
        parts[f"reducer{number}"] = {"kind": "pressure_reducer", **values}
        pipes += [f"before -> reducer{number}.in", f"reducer{number}.out -> {tee}"]
    if draw(st.sampled_from([True, False, False])):
        parts["past"] = {"kind": "check_valve"}
        pipes += [f"{tee} -> past.in", "past.out -> before"]
    return Layout(parts, tuple(pipes))


def is_open(system: System, heater: str, bound_pa: float) -> bool:
    drawn = Drawn(system)
    ladder = drawn.network.ladder(drawn.zone(f"{heater}.cold"))
    return any(rung.role.is_way_out and rung.opens_pa <= bound_pa for rung in ladder)


def without_bypasses(layout: Layout) -> System:
    parts = json.loads(json.dumps(layout.parts).replace('"bypass": true', '"bypass": false'))
    return replace(layout, parts=parts).system


@EXAMPLES
@given(reduced(), st.sampled_from([250e3, 450e3, 650e3]))
def test_bypasses_are_named_where_they_are_all_that_keeps_a_heater_open(layout: Layout, bound_pa: float) -> None:
    drawn = Drawn(layout.system)
    heater = "storage_heater1"
    named = drawn.network.bypasses(drawn.zone(f"{heater}.cold"), bound_pa)
    closes = is_open(layout.system, heater, bound_pa) and not is_open(without_bypasses(layout), heater, bound_pa)
    assert bool(named) == closes
    for name in named:
        assert '"bypass": true' in json.dumps(layout.parts[name])
