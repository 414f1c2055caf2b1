"""A recipe and a chance in, the stock of a family of layouts out, drawn block by block in the direction of flow."""

from random import Random

from plumbnet.study.exercise.blocks import annex, feed, heating, service, shared, single, taps
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Stock
from plumbnet.study.exercise.town import address
from plumbnet.study.exercise.usual_sizes import Usual

_ATTIC_FLOORS = 2


def building(recipe: Recipe, chance: Random, usual: Usual) -> Stock:
    """The stock, under neutral names; its parts stand as they were drawn."""
    sketch = Sketch(chance, usual)
    if sketch.likely(recipe.heights):
        sketch.plant = sketch.pick((usual.basement, 0, _ATTIC_FLOORS * usual.floor))
    service(sketch, recipe)
    circulated = sketch.likely(recipe.circulation)
    line = feed(sketch, recipe, circulated=circulated)
    large = sketch.likely(recipe.shared)
    draw = shared if large else heating if sketch.likely(recipe.boiler) else single
    hot = draw(sketch, recipe, line)
    taps(sketch, recipe, hot, circulated=circulated)
    if sketch.likely(recipe.annex):
        annex(sketch, recipe)
    return sketch.stock(address(chance, large=large))
