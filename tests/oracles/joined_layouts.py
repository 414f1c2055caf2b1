"""Random layouts hung on one trunk, each behind a device or a plain pipe, so that districts are many and touch."""

from hypothesis import strategies as st

from oracles.random_closed import closed_layouts
from oracles.random_layouts import Layout, Values, layouts

SUPPLIES = ("main", "well", "open_tank")
STREETS: tuple[Values, ...] = (
    {"kind": "main", "pressure": 300},
    {"kind": "main", "pressure": 400},
    {"kind": "main", "pressure": 600},
    {"kind": "main", "pressure": 400, "highest": 600},
    {"kind": "main", "pressure": 300, "lowest": 50},
    {"kind": "main", "pressure": 300, "highest": 400, "lowest": 150},
)
ENTRIES: tuple[Values, ...] = (
    {"kind": "valve"},
    {"kind": "meter"},
    {"kind": "check_valve"},
    {"kind": "reduced_pressure_assembly", "opens": 20},
    {"kind": "pressure_reducer", "set": 350},
    {"kind": "pressure_reducer", "set": 350, "bypass": True},
    {"kind": "valve", "state": "shut"},
)
TRUNK: tuple[Values, ...] = (
    {"kind": "meter"},
    {"kind": "valve"},
    {"kind": "check_valve"},
    {"kind": "pressure_reducer", "set": 500},
)


@st.composite
def joined_layouts(draw: st.DrawFn, most: int = 3) -> Layout:
    """A main, a trunk, and on it two or more random layouts without supplies of their own, but for a few."""
    trunk = draw(st.sampled_from(TRUNK))
    parts: dict[str, Values] = {"street": dict(draw(st.sampled_from(STREETS)))}
    parts |= {"entry": dict(trunk), "trunk0": {"kind": "tee"}}
    pipes = ["street -> entry -> trunk0"]
    for number in range(draw(st.integers(2, most))):
        if number:
            parts[f"trunk{number}"] = {"kind": "tee"}
            pipes.append(f"trunk{number - 1} -> trunk{number}")
        _hang(draw, number, parts, pipes)
    return Layout(parts, tuple(pipes))


def _hang(draw: st.DrawFn, number: int, parts: dict[str, Values], pipes: list[str]) -> None:
    """One random layout behind a device; its own supplies are mostly left out."""
    own = draw(st.one_of(layouts(most=5), closed_layouts(most=5)))
    keeps_supplies = draw(st.sampled_from([False, False, False, False, True]))
    kept = {name for name, values in own.parts.items() if keeps_supplies or values["kind"] not in SUPPLIES}
    parts |= {f"{name}_{number}": own.parts[name] for name in own.parts if name in kept}
    joints = set[str]()
    for pipe in own.pipes:
        ends = pipe.split(" -> ")
        if all(end.partition(".")[0] in kept for end in ends):
            pipes.append(" -> ".join(_renamed(end, number) for end in ends))
            joints |= {end.partition(".")[0] for end in ends}
    for name in kept - joints:
        del parts[f"{name}_{number}"]
    tees = sorted(name for name in joints if own.parts[name]["kind"] == "tee")
    entry = draw(st.sampled_from(ENTRIES))
    if tees:
        parts[f"entry_{number}"] = dict(entry)
        pipes.append(f"trunk{number} -> entry_{number} -> {draw(st.sampled_from(tees))}_{number}")


def _renamed(end: str, number: int) -> str:
    name, dot, port = end.partition(".")
    return f"{name}_{number}{dot}{port}"
