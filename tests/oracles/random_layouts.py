"""Random layouts of a few parts of every kind, joined in tees, as the text of a file."""

import json
from collections.abc import Mapping
from dataclasses import dataclass

from hypothesis import strategies as st

from plumbnet.layout.apply import with_changes
from plumbnet.layout.change import Change
from plumbnet.layout.part import KINDS
from plumbnet.layout.read import read_system
from plumbnet.layout.system import System

Values = dict[str, object]

BOOLEAN = st.booleans()
CHECK = {"check": BOOLEAN}
BACKFLOW = {"opens": st.sampled_from([0, 0, 0, 20, 90]), "state": st.sampled_from(["sound", "sound", "stuck_open"])}
HOT = {"setpoint": st.just(60), "relief": st.sampled_from([None, None, {"pressure": 700}])}
STORE = HOT | {"volume": st.just(100)}
PASSAGES = [
    [{"free": ["a", "b"]}, {"one_way": ["b", "c"], "opens": 30}],
    [{"one_way": ["a", "b"]}, {"one_way": ["a", "c"]}],
    [{"reducing": ["a", "b"], "set": 300, "bypass": True}, {"free": ["b", "c"]}],
    [{"shut": ["a", "b"]}, {"free": ["a", "c"]}],
]
FIELDS: dict[str, Mapping[str, st.SearchStrategy[object]]] = {
    "main": {
        "pressure": st.sampled_from([200, 300, 400, 600]),
        "highest": st.sampled_from([None, None, 600, 650]),
        "lowest": st.sampled_from([None, None, 200, 50]),
        "temperature": st.sampled_from([5, 10, 15]),
    },
    "filling_loop": {"fill": st.sampled_from([100, 250]), "state": st.sampled_from(["shut", "shut", "open"])},
    "well": {"cut_in": st.just(200), "cut_out": st.sampled_from([350, 500])},
    "open_tank": {},
    "vent": {},
    "tee": {},
    "meter": CHECK,
    "valve": {
        "state": st.sampled_from(["open", "open", "open", "shut"]),
        "locked": st.sampled_from([False, False, True]),
    },
    "check_valve": BACKFLOW,
    "dual_check": BACKFLOW,
    "double_check": BACKFLOW,
    "reduced_pressure_assembly": BACKFLOW,
    "vacuum_breaker": BACKFLOW,
    "pressure_reducer": {"set": st.sampled_from([250, 350, 500]), "bypass": BOOLEAN},
    "booster_pump": {"rise": st.sampled_from([0, 100, 250]), "check": BOOLEAN},
    "circulator": CHECK
    | {"running": st.sampled_from([True, True, False]), "head": st.sampled_from([None, None, "60 kPa", "250 kPa"])},
    "softener": CHECK,
    "filter": CHECK,
    "heat_trap": {},
    "mixing_valve": {"checks": BOOLEAN},
    "storage_tank": {"volume": st.just(200)},
    "storage_heater": STORE,
    "tankless_heater": HOT,
    "indirect_heater": STORE,
    "heat_exchanger": HOT,
    "boiler": STORE,
    "emitter": {"volume": st.just(10)},
    "solar_collector": STORE,
    "fixture": {"crossover": st.sampled_from([False, False, True]), "drawing": st.sampled_from([False] * 5 + [True])},
    "expansion_tank": {
        "volume": st.just(18),
        "precharge": st.sampled_from([150, 300, 450, 650]),
        "state": st.sampled_from(["sound", "sound", "sound", "waterlogged"]),
    },
    "relief_valve": {"pressure": st.sampled_from([500, 700, 1000])},
    "expansion_relief": {"pressure": st.sampled_from([450, 600])},
    "device": {"ports": st.just(["a", "b", "c"]), "passages": st.sampled_from(PASSAGES)},
}
"""The fields that a layout may vary, by kind; metric units."""

HOLDING = {"pipe": "copper-L 3/4 in", "length": "6 m"}
ELEVATIONS = [0, 0, 0, 0, 10, 25, -5]
ALL = tuple(FIELDS)
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
        name = f"{kind}{number}"
        parts[name] = draw(_values(kind))
        ports = ("a", "b", "c") if kind == "device" else KINDS[kind].ports
        free = [port for port in ports if not (port == "relief" and parts[name].get("relief"))]
        for index, port in enumerate(free):
            if index == 0 or draw(st.sampled_from([True, True, True, False])):
                pipes.append(f"{draw(st.sampled_from(tees))} -> {name}.{port}")
    used = [tee for tee in tees if any(tee in pipe.split(" -> ") for pipe in pipes)]
    tee: Values = {"kind": "tee"}
    return Layout(dict.fromkeys(used, tee) | parts, tuple(pipes))


@st.composite
def _values(draw: st.DrawFn, kind: str) -> Values:
    values = {field: draw(strategy) for field, strategy in FIELDS[kind].items()}
    elevation = draw(st.sampled_from(ELEVATIONS))
    return {"kind": kind, "elevation": elevation} | {key: value for key, value in values.items() if value is not None}
