"""What takes up or lets off the growth: an expansion tank, right or wrong, or an expansion relief valve."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot
from plumbnet.study.exercise.usual_sizes import RoundNumber

_UNCHARGED = 0.15
"""Share of tanks left at the charge they came with."""
_WATERLOGGED = 0.08
_WHERE = (Spot.SERVICE, Spot.WING, Spot.FEED, Spot.COLD)


def control(sketch: Sketch, recipe: Recipe, height: RoundNumber) -> list[str]:
    """The tee of a tank or an expansion relief valve, which hangs on it; nothing or both, as the recipe has it."""
    if sketch.likely(recipe.tank):
        return [_tank(sketch, recipe, height), *(_spill(sketch) if sketch.likely(recipe.both) else [])]
    return _spill(sketch) if sketch.likely(recipe.spill) else []


def _spill(sketch: Sketch) -> list[str]:
    tee = sketch.hanger(*_WHERE)
    opens = sketch.pressure(sketch.pick(sketch.usual.spill_sets))
    sketch.run(tee, sketch.part("spill", "expansion_relief", pressure=opens), place=Spot.CONTROL)
    return [tee]


def _tank(sketch: Sketch, recipe: Recipe, height: RoundNumber) -> str:
    tee = sketch.hanger(*_WHERE)
    charge = sketch.usual.factory_charge if sketch.likely(_UNCHARGED) else sketch.line_at(height)
    if sketch.likely(recipe.overcharged):
        charge += sketch.usual.rises[0]
    worn: dict[str, object] = {"state": "waterlogged"} if sketch.likely(_WATERLOGGED) else {}
    stop = [sketch.part("tank-stop", "valve")] if sketch.likely(recipe.tank_valve) else []
    sizes = sketch.usual.tank_sizes
    volume = sketch.volume(sketch.pick(sizes if sketch.likely(recipe.small_tank) else sizes[len(sizes) // 2 :]))
    tank = sketch.part(
        "tank", "expansion_tank", height=height, volume=volume, precharge=sketch.pressure(max(charge, 0)), **worn
    )
    sketch.run(tee, *stop, tank, place=Spot.CONTROL)
    return tee
