"""A recipe and a chance in, the stock of a family of layouts out, drawn block by block in the direction of flow."""

from collections.abc import Callable
from random import Random

from plumbnet.study.exercise.blocks import (
    annex,
    feed,
    heating,
    open_vent,
    roof_service,
    service,
    shared,
    single,
    solar,
    taps,
)
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
    roofed = sketch.likely(recipe.cistern)
    (roof_service if roofed else service)(sketch, recipe)
    circulated = sketch.likely(recipe.circulation)
    line = feed(sketch, recipe, circulated=circulated)
    large = sketch.likely(recipe.shared)
    draw = shared if large else _plant(sketch, recipe)
    if roofed:
        line.append(open_vent(sketch))
    hot = draw(sketch, recipe, line)
    taps(sketch, recipe, hot, circulated=circulated)
    if sketch.likely(recipe.annex):
        annex(sketch, recipe)
    return sketch.stock(address(chance, large=large))


def _plant(sketch: Sketch, recipe: Recipe) -> Callable[[Sketch, Recipe, list[str]], str]:
    """What warms the water of a house: a boiler, the sun, or a heater of its own."""
    if sketch.likely(recipe.boiler):
        return heating
    return solar if sketch.likely(recipe.solar) else single
