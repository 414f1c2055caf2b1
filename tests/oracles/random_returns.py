"""Random buildings whose zones stand behind reducers or boosters and send their hot water back to one heater."""

from itertools import pairwise

from hypothesis import strategies as st

from oracles.random_layouts import ELEVATIONS, Layout, Values

PRESSURES = [200, 300, 400, 600]
HEADS = [None, None, "60 kPa", "150 kPa", "400 kPa"]
FEEDS = ["pressure_reducer", "pressure_reducer", "booster_pump", "check_valve", "valve"]
RETURNS = ["check_valve", "check_valve", "valve", "circulator", "circulator", "pressure_reducer"]


@st.composite
def zoned(draw: st.DrawFn) -> Layout:
    """A main, a heater, one to three zones fed through something, and their returns by a pump of all or of each."""
    parts: dict[str, Values] = {"main": {"kind": "main", "pressure": draw(st.sampled_from(PRESSURES))}}
    parts["heater"] = {"kind": "storage_heater", "volume": 100, "setpoint": 60}
    parts |= {name: {"kind": "tee"} for name in ("cold", "hot", "back")}
    pipes = [f"main -> {_put(draw, parts, 'inlet', ['valve', 'check_valve'])} -> cold", "cold -> heater -> hot"]
    for number in range(draw(st.integers(1, 3))):
        zone = f"zone{number}"
        parts[zone] = {"kind": "tee", "elevation": draw(st.sampled_from(ELEVATIONS))}
        pipes.append(f"hot -> {_put(draw, parts, f'feed{number}', FEEDS)} -> {zone}")
        pipes.append(f"{zone} -> {_put(draw, parts, f'return{number}', RETURNS)} -> back")
        if draw(st.sampled_from([False, False, False, True])):
            parts[f"main{number}"] = {"kind": "main", "pressure": draw(st.sampled_from(PRESSURES))}
            pipes.append(f"main{number} -> {_put(draw, parts, f'inlet{number}', ['valve', 'check_valve'])} -> {zone}")
    last = _put(draw, parts, "last", ["circulator", "circulator", "circulator", "pressure_reducer", "booster_pump"])
    pipes.append(f"back -> {last} -> {draw(st.sampled_from(['cold', 'cold', 'heater.return']))}")
    steps = [" -> ".join(pair) for pipe in pipes for stops in [pipe.split(" -> ")] for pair in pairwise(stops)]
    return Layout(parts, tuple(steps), frozenset(step for step in steps if draw(st.booleans())))


def _put(draw: st.DrawFn, parts: dict[str, Values], name: str, kinds: list[str]) -> str:
    """One of the kinds of parts that stand in a pipe, under a name."""
    fields: dict[str, dict[str, st.SearchStrategy[object]]] = {
        "pressure_reducer": {"set": st.sampled_from([150, 250, 350]), "bypass": st.booleans()},
        "booster_pump": {"rise": st.sampled_from([100, 250]), "check": st.sampled_from([True, True, False])},
        "circulator": {"check": st.booleans(), "head": st.sampled_from(HEADS)},
    }
    kind = draw(st.sampled_from(kinds))
    values = {field: draw(strategy) for field, strategy in fields.get(kind, {}).items()}
    elevation = draw(st.sampled_from(ELEVATIONS))
    parts[name] = {"kind": kind, "elevation": elevation} | {
        key: value for key, value in values.items() if value is not None
    }
    return name
