"""The cold pipe from the building's first tee to its heaters."""

from plumbnet.study.exercise.blocks.growth_control import control
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot


def feed(sketch: Sketch, recipe: Recipe, *, circulated: bool) -> list[str]:
    """The parts between the tee `split` and the heaters; ends in the tee `return` where water circulates."""
    line = [sketch.part("check", "check_valve")] if sketch.likely(recipe.own_check) else []
    line += control(sketch, recipe, sketch.plant)
    if sketch.likely(recipe.vacuum_relief):
        line.append(_vacuum_relief(sketch))
    if sketch.likely(recipe.heat_trap):
        line.append(sketch.part("trap", "heat_trap"))
    if sketch.likely(recipe.heater_valve):
        line.append(sketch.part("heater-stop", "valve"))
    if circulated:
        line.append(sketch.part("return", "tee"))
    return line


def _vacuum_relief(sketch: Sketch) -> str:
    """The tee of a vacuum relief valve."""
    tee = sketch.hanger(Spot.FEED)
    sketch.run(tee, sketch.part("vacuum", "vacuum_relief_valve", height=sketch.plant))
    return tee
