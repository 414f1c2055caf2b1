"""What takes up or lets off the growth: an expansion tank, right or wrong, or an expansion relief valve."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual_sizes import RoundNumber

_UNCHARGED = 0.15
"""Share of tanks left at the charge they came with."""
_WATERLOGGED = 0.12


def control(sketch: Sketch, recipe: Recipe, at: str, height: RoundNumber) -> None:
    """Hang a tank or an expansion relief valve on the tee `at`, or nothing, as the recipe has it."""
    if sketch.likely(recipe.tank):
        _tank(sketch, recipe, at, height)
    elif sketch.likely(recipe.spill):
        spill = sketch.part("spill", "expansion_relief", pressure=sketch.pressure(sketch.pick(sketch.usual.spill_sets)))
        sketch.run(at, spill)


def _tank(sketch: Sketch, recipe: Recipe, at: str, height: RoundNumber) -> None:
    charge = sketch.usual.factory_charge if sketch.likely(_UNCHARGED) else sketch.line_at(height)
    worn: dict[str, object] = {"state": "waterlogged"} if sketch.likely(_WATERLOGGED) else {}
    stop = [sketch.part("tank-stop", "valve", height=height)] if sketch.likely(recipe.tank_valve) else []
    volume = sketch.volume(sketch.pick(sketch.usual.tank_sizes))
    tank = sketch.part(
        "tank", "expansion_tank", height=height, volume=volume, precharge=sketch.pressure(max(charge, 0)), **worn
    )
    sketch.run(at, *stop, tank)
