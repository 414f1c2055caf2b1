"""The cold pipe from the building's first tee to its heaters."""

from plumbnet.study.exercise.blocks.growth_control import control
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch


def feed(sketch: Sketch, recipe: Recipe, *, circulated: bool) -> list[str]:
    """The parts between the tee `split` and the heaters; ends in the tee `return` where water circulates."""
    line = [sketch.part("check", "check_valve")] if sketch.likely(recipe.own_check) else []
    line += control(sketch, recipe, sketch.plant)
    if sketch.likely(recipe.heater_valve):
        line.append(sketch.part("heater-stop", "valve"))
    if circulated:
        line.append(sketch.part("return", "tee"))
    return line
