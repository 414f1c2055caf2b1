"""What takes up or lets off the growth: an expansion tank, right or wrong, or an expansion relief valve."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual import FACTORY_CHARGE_PSI, SPILL_SETS_PSI, TANK_SIZES_GAL

_UNCHARGED = 0.15
"""Share of tanks left at the charge they came with."""
_WATERLOGGED = 0.12


def control(sketch: Sketch, recipe: Recipe, at: str, height_ft: int) -> None:
    """Hang a tank or an expansion relief valve on the tee `at`, or nothing, as the recipe has it."""
    if sketch.likely(recipe.tank):
        _tank(sketch, recipe, at, height_ft)
    elif sketch.likely(recipe.spill):
        spill = sketch.part("spill", "expansion_relief", pressure=f"{sketch.pick(SPILL_SETS_PSI)} psi")
        sketch.run(at, spill)


def _tank(sketch: Sketch, recipe: Recipe, at: str, height_ft: int) -> None:
    charge = FACTORY_CHARGE_PSI if sketch.likely(_UNCHARGED) else sketch.line_at_psi(height_ft)
    worn: dict[str, object] = {"state": "waterlogged"} if sketch.likely(_WATERLOGGED) else {}
    stop = [sketch.part("tank-stop", "valve", height_ft=height_ft)] if sketch.likely(recipe.tank_valve) else []
    volume = f"{sketch.pick(TANK_SIZES_GAL)} gal"
    tank = sketch.part(
        "tank", "expansion_tank", height_ft=height_ft, volume=volume, precharge=f"{max(charge, 0)} psi", **worn
    )
    sketch.run(at, *stop, tank)
