"""A cylinder for the taps' water, and the collector on the roof that warms it with its own circuit."""

from plumbnet.study.exercise.blocks.heating_plant import cylinder, served
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot

_WORN = 0.1
"""Share of the circuits' tanks whose membrane has failed."""


def solar(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """The cylinder at the end of the cold pipe, and the collector's circuit, filled by hand from `split`; the hot tee.

    Where in the circuit its check, its stop and the tee of its tank stand is left to chance.
    """
    usual, fill = sketch.usual, sketch.pressure(sketch.usual.collector_fill)
    heater = cylinder(sketch, recipe, usual.collector_power)
    hot = served(sketch, line, heater)
    collector = sketch.part(
        "collector",
        "solar_collector",
        height=usual.roof - usual.tap,
        volume=sketch.volume(sketch.pick(usual.collector_volumes)),
        setpoint=sketch.temperature(usual.collector_hottest),
        input=sketch.power(usual.collector_power),
        relief={"pressure": sketch.pressure(usual.collector_relief)},
    )
    fed = sketch.part("solar-tee", "tee", height=sketch.plant)
    sketch.run("split", sketch.part("filling-loop", "filling_loop", height=sketch.plant, fill=fill), fed)
    devices = [
        sketch.part("solar-pump", "circulator"),
        sketch.part("solar-check", "check_valve"),
        sketch.part("solar-stop", "valve"),
    ]
    sketch.run(fed, *devices, collector, place=Spot.CIRCUIT)
    sketch.run(collector, f"{heater}.coil_in", place=Spot.CIRCUIT)
    sketch.run(f"{heater}.coil_out", _tank(sketch, fill), fed, place=Spot.CIRCUIT)
    return hot


def _tank(sketch: Sketch, fill: str) -> str:
    """The tee of the circuit's tank, which hangs on it."""
    usual, tee = sketch.usual, sketch.hanger(Spot.CIRCUIT)
    worn: dict[str, object] = {"state": "waterlogged"} if sketch.likely(_WORN) else {}
    volume = sketch.volume(sketch.pick(usual.heating_tank_sizes))
    tank = sketch.part("solar-tank", "expansion_tank", height=sketch.plant, volume=volume, precharge=fill, **worn)
    sketch.run(tee, tank)
    return tee
