"""A second heater for a far tap, on a wing of its own, so that heaters may stand in each other's place."""

from dataclasses import replace

from plumbnet.study.exercise.blocks.heater_plant import plain_heater
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot


def annex(sketch: Sketch, recipe: Recipe) -> None:
    """The cold pipe of the wing from the tee `split`, its heater with a valve, and one fixture."""
    usual = sketch.usual
    heater = plain_heater(sketch, replace(recipe, bare=0.0, tankless=recipe.annex_tankless))
    split = sketch.part("wing", "tee")
    fixture = sketch.part("annex", "fixture", height=usual.tap)
    check = [sketch.part("check", "check_valve")] if sketch.likely(recipe.annex_check) else []
    sketch.run("split", split, place=Spot.WING)
    sketch.run(split, *check, sketch.part("stop", "valve"), heater, place=Spot.FEED)
    sketch.run(
        heater, f"{fixture}.hot", place=Spot.HOT_TAP, pipe=sketch.pick(usual.tubes), length=sketch.pick(usual.lengths)
    )
    sketch.run(split, f"{fixture}.cold", place=Spot.TAP)
