"""The heaters: one of them, or several between shared headers."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot

_BRANCH_VALVE = 0.5


def relief(sketch: Sketch, heater_input: int, pressure: int) -> dict[str, str]:
    """The relief valve of a set pressure that goes with an input."""
    usual = sketch.usual
    return {
        "pressure": sketch.pressure(pressure),
        "temperature": sketch.temperature(usual.relief_temperature),
        "capacity": sketch.power(usual.capacity(heater_input)),
    }


def single(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """One heater at the end of the cold pipe; the tee from which its hot water is taken."""
    heater = plain_heater(sketch, recipe)
    relieved = relief_apart(sketch, heater)
    hot = sketch.part("hot", "tee", height=sketch.plant)
    sketch.run("split", *line, *relieved, heater, place=Spot.FEED)
    sketch.run(heater, hot, place=Spot.HOT)
    return hot


def relief_apart(sketch: Sketch, heater: str) -> list[str]:
    """The tee of a relief valve in the cold pipe, of a heater that has none of its own; nothing where it has one."""
    fields = sketch.parts[heater]
    if "relief" in fields:
        return []
    usual = sketch.usual
    tee = sketch.hanger(Spot.FEED)
    sets = {
        "pressure": sketch.pressure(sketch.pick(usual.relief_pressures)),
        "temperature": sketch.temperature(usual.relief_temperature),
    }
    capacity = sketch.power(usual.capacity(int(str(fields["input"]).split()[0])))
    sketch.run(tee, sketch.part("relief", "relief_valve", height=sketch.plant, **sets, capacity=capacity))
    return [tee]


def shared(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """Two or three heaters, each between a cold and a hot header, from which hot water is taken."""
    cold = sketch.part("cold-header", "tee", height=sketch.plant)
    sketch.run("split", *line, cold, place=Spot.FEED)
    hot = sketch.part("hot-header", "tee", height=sketch.plant)
    number = sketch.pick((2, 2, 3))
    valves, checks, large = sketch.likely(_BRANCH_VALVE), sketch.likely(recipe.branch_checks), sketch.likely(0.4)
    for _ in range(number):
        own = [sketch.part("stop", "valve")] if valves else []
        if checks and sketch.likely(0.6):
            own.append(sketch.part("check", "check_valve"))
        heater = plain_heater(sketch, recipe, large=large)
        sketch.run(cold, *own, heater, place=Spot.BRANCH)
        sketch.run(heater, *([sketch.part("stop", "valve")] if valves else []), hot, place=Spot.HOT)
    return hot


def plain_heater(sketch: Sketch, recipe: Recipe, *, large: bool = False) -> str:
    """A storage heater, large or of a house, or a tankless one."""
    usual = sketch.usual
    setpoint = sketch.temperature(sketch.pick(usual.setpoints))
    if sketch.likely(recipe.tankless):
        heater_input = sketch.pick(usual.tankless_inputs)
        kind, volume = "tankless_heater", {}
    else:
        size = sketch.pick(usual.large_storage_heaters if large else usual.storage_heaters)
        heater_input = size.input
        kind, volume = "storage_heater", {"volume": sketch.volume(size.volume)}
    valve = relief(sketch, heater_input, sketch.pick(usual.relief_pressures))
    own: dict[str, object] = {} if sketch.likely(recipe.bare) else {"relief": valve}
    return sketch.part(
        "heater", kind, height=sketch.plant, **volume, setpoint=setpoint, input=sketch.power(heater_input), **own
    )
