"""A recipe and a chance in, the text of a layout out, drawn block by block in the direction of flow."""

from random import Random

from plumbnet.study.exercise.blocks.feed import feed
from plumbnet.study.exercise.blocks.heating import heating
from plumbnet.study.exercise.blocks.plant import shared, single
from plumbnet.study.exercise.blocks.service import service
from plumbnet.study.exercise.blocks.taps import taps
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.town import address
from plumbnet.study.exercise.usual import FLOOR_FT

BASEMENT_FT, ATTIC_FT = -8, 2 * FLOOR_FT


def building(recipe: Recipe, chance: Random) -> str:
    """The text of a layout."""
    sketch = Sketch(chance)
    if sketch.likely(recipe.heights):
        sketch.plant_ft = sketch.pick((BASEMENT_FT, 0, ATTIC_FT))
    sketch.run(*service(sketch, recipe))
    circulated = sketch.likely(recipe.circulation)
    line = feed(sketch, recipe, circulated=circulated)
    large = sketch.likely(recipe.shared)
    draw = shared if large else heating if sketch.likely(recipe.boiler) else single
    hot = draw(sketch, recipe, line)
    taps(sketch, recipe, hot, circulated=circulated)
    return sketch.text(address(chance, large=large))
