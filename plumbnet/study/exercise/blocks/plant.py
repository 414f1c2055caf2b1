"""The heaters: one of them, or several between shared headers."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual import (
    LARGE_STORAGE_HEATERS,
    RELIEF_F,
    RELIEF_PSI,
    SETPOINTS_F,
    STORAGE_HEATERS,
    TANKLESS_INPUTS_BTU_H,
    capacity_btu_h,
)

LETTERS = "abc"
_BRANCH_CHECK = 0.3
"""Share of heaters on shared headers that have checks of their own."""
_BRANCH_VALVE = 0.5


def relief(input_btu_h: int, *, psi: int = RELIEF_PSI) -> dict[str, str]:
    """The relief valve that goes with an input."""
    capacity = f"{capacity_btu_h(input_btu_h)} Btu/h"
    return {"pressure": f"{psi} psi", "temperature": f"{RELIEF_F} degF", "capacity": capacity}


def single(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """One heater at the end of the cold pipe; the tee from which its hot water is taken."""
    heater = _heater(sketch, recipe, "heater", large=False)
    hot = sketch.part("hot-tee", "tee", height_ft=sketch.plant_ft)
    sketch.run("split", *line, heater, hot)
    return hot


def shared(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """Two or three heaters, each between a cold and a hot header, from which hot water is taken."""
    cold = sketch.part("cold-header", "tee", height_ft=sketch.plant_ft)
    sketch.run("split", *line, cold)
    number = sketch.pick((2, 2, 3))
    valves, checks, large = sketch.likely(_BRANCH_VALVE), sketch.likely(_BRANCH_CHECK), sketch.likely(0.4)
    branches: list[list[str]] = []
    for letter in LETTERS[:number]:
        own = [sketch.part(f"cold-{letter}", "valve", height_ft=sketch.plant_ft)] if valves else []
        if checks and sketch.likely(0.6):
            own.append(sketch.part(f"check-{letter}", "check_valve", height_ft=sketch.plant_ft))
        own.append(_heater(sketch, recipe, f"heater-{letter}", large=large))
        own += [sketch.part(f"hot-{letter}", "valve", height_ft=sketch.plant_ft)] if valves else []
        branches.append(own)
    hot = sketch.part("hot-header", "tee", height_ft=sketch.plant_ft)
    for own in branches:
        sketch.run(cold, *own, hot)
    return hot


def _heater(sketch: Sketch, recipe: Recipe, name: str, *, large: bool) -> str:
    setpoint = f"{sketch.pick(SETPOINTS_F)} degF"
    if sketch.likely(recipe.tankless):
        input_btu_h = sketch.pick(TANKLESS_INPUTS_BTU_H)
        kind, volume = "tankless_heater", {}
    else:
        size = sketch.pick(LARGE_STORAGE_HEATERS if large else STORAGE_HEATERS)
        input_btu_h = size.input_btu_h
        kind, volume = "storage_heater", {"volume": f"{size.gallons} gal"}
    own: dict[str, object] = {} if sketch.likely(recipe.bare) else {"relief": relief(input_btu_h)}
    return sketch.part(
        name,
        kind,
        height_ft=sketch.plant_ft,
        **volume,
        setpoint=setpoint,
        input=f"{input_btu_h} Btu/h",
        **own,
    )
