"""The cold pipe from the building's first tee to its heaters."""

from plumbnet.study.exercise.blocks.growth_control import control
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch

_BEFORE_CHECK = 0.3
"""Share of controls that hang before the heaters' own check."""


def feed(sketch: Sketch, recipe: Recipe, *, circulated: bool) -> list[str]:
    """The parts between the tee `split` and the heaters; ends in the tee `return-tee` where water circulates."""
    before, behind = _tees(sketch, recipe)
    line = [*before]
    if before and sketch.likely(_BEFORE_CHECK):
        control(sketch, recipe, "split", 0)
    elif behind:
        control(sketch, recipe, behind[0], sketch.plant)
    line += behind
    if sketch.likely(recipe.heater_valve):
        line.append(sketch.part("heater-stop", "valve", height=sketch.plant))
    if circulated:
        line.append(sketch.part("return-tee", "tee", height=sketch.plant))
    return line


def _tees(sketch: Sketch, recipe: Recipe) -> tuple[list[str], list[str]]:
    """The heaters' own check, if they have one, and the tee behind it at which a control may hang."""
    check = [sketch.part("heater-check", "check_valve")] if sketch.likely(recipe.own_check) else []
    return check, [sketch.part("tank-tee", "tee", height=sketch.plant)] if sketch.likely(recipe.tank_tee) else []
