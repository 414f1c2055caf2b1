"""Random layouts that are mostly closed: every main and well stands behind a check, and tanks come thick."""

from hypothesis import strategies as st

from oracles.random_layouts import Layout, layouts

KINDS = (
    "storage_heater",
    "storage_heater",
    "tankless_heater",
    "tankless_heater",
    "boiler",
    "expansion_tank",
    "expansion_tank",
    "check_valve",
    "check_valve",
    "pressure_reducer",
    "valve",
    "circulator",
    "storage_tank",
    "relief_valve",
    "expansion_relief",
    "fixture",
    "vent",
    "main",
)
SUPPLIES = ("main", "well")


def closed_layouts(most: int = 12) -> st.SearchStrategy[Layout]:
    """A main and a heater and up to `most` more parts, with a check at every supply."""
    return layouts(KINDS, most).map(_checked)


def _checked(layout: Layout) -> Layout:
    parts, pipes = dict(layout.parts), []
    for pipe in layout.pipes:
        tee, _, end = pipe.partition(" -> ")
        name = end.partition(".")[0]
        if layout.parts.get(name, {}).get("kind") in SUPPLIES:
            check = f"check at {name}".replace(" ", "_")
            parts[check] = {"kind": "check_valve"}
            pipes += [f"{end} -> {check}.in", f"{check}.out -> {tee}"]
        else:
            pipes.append(pipe)
    return Layout(parts, tuple(pipes))
