"""A cistern under the roof between the street and the building's own piping, and the vent that goes with it."""

from dataclasses import replace

from plumbnet.study.exercise.blocks.service_pipe import service
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot


def roof_service(sketch: Sketch, recipe: Recipe) -> None:
    """Main, meter and stop to a cistern, and from that down to the tee `split`; a tap in the yard before it.

    Nobody puts reducers or boosters before or behind a cistern, whose height alone gives the pressure.
    """
    usual = sketch.usual
    low = replace(recipe, high_main=0.0, reducer=0.0, second_reducer=0.0, booster=0.0, assembly=0.0)
    service(sketch, low, ends="rise")
    volume, temperature = sketch.volume(usual.cistern_volume), sketch.temperature(max(usual.main_temperatures))
    cistern = sketch.part("cistern", "open_tank", height=usual.roof, volume=volume, temperature=temperature)
    sketch.run("rise", cistern)
    sketch.line = round(usual.head * usual.roof)
    sketch.run(cistern, sketch.part("split", "tee"), place=Spot.WING)


def open_vent(sketch: Sketch) -> str:
    """The tee of an open vent, which may stand before a heater or behind it; it ends above the cistern."""
    usual, tee = sketch.usual, sketch.hanger(Spot.FEED, Spot.HOT)
    sketch.run(tee, sketch.part("vent", "vent", height=usual.roof + 2 * usual.tap))
    return tee
