"""`change` lists, innermost first."""

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System

TEXT = """
plumbnet: 1
assemblies:
  room:
    ports: [c]
    parts: {c: tee, stop: valve, tap: fixture}
    runs: [c -> stop -> tap.cold]
    change: [{close: stop}, {insert: {part: filter, kind: filter, between: [c, stop]}}]
  wing:
    ports: {c: rooms/1.c}
    parts: {rooms: {use: room, times: 2}}
    runs: [rooms/1.c -> rooms/2.c]
    change: [{open: rooms/2/stop}]
parts: {street: {kind: main, pressure: 60 psi}, t: tee, wings: {use: wing, times: [a, b]}}
runs: [street -> t -> wings/each.c]
change:
  - open: wings/b/rooms/first/stop
  - set: {part: wings/a/rooms/2/tap, crossover: true}
"""


def read(text: str) -> System:
    return read_system(text.strip().encode(), file="f.yaml")


def test_inner_changes_are_made_before_outer_ones() -> None:
    system = read(TEXT)
    stops = {name: part.is_valve() for name, part in system.parts.items() if name.endswith("/stop")}
    assert stops == {
        "wings/a/rooms/1/stop": False,
        "wings/a/rooms/2/stop": True,
        "wings/b/rooms/1/stop": True,
        "wings/b/rooms/2/stop": True,
    }
    assert sum(name.endswith("/filter") for name in system.parts) == 4


def test_scenarios_start_from_there() -> None:
    system = read(f"{TEXT}scenarios:\n  all-open: {{change: [{{open: wings/each/rooms/each/stop}}]}}")
    after = system.with_changes(system.changes_of("all-open"))
    assert all(part.is_valve() for name, part in after.parts.items() if name.endswith("/stop"))
