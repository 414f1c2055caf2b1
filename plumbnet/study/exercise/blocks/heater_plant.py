"""The heaters: one of them, or several between shared headers."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch

_LETTERS = "abc"
_BRANCH_CHECK = 0.3
"""Share of heaters on shared headers that have checks of their own."""
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
    heater = _heater(sketch, recipe, "heater", large=False)
    hot = sketch.part("hot-tee", "tee", height=sketch.plant)
    sketch.run("split", *line, heater, hot)
    return hot


def shared(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """Two or three heaters, each between a cold and a hot header, from which hot water is taken."""
    cold = sketch.part("cold-header", "tee", height=sketch.plant)
    sketch.run("split", *line, cold)
    number = sketch.pick((2, 2, 3))
    valves, checks, large = sketch.likely(_BRANCH_VALVE), sketch.likely(_BRANCH_CHECK), sketch.likely(0.4)
    branches: list[list[str]] = []
    for letter in _LETTERS[:number]:
        own = [sketch.part(f"cold-{letter}", "valve", height=sketch.plant)] if valves else []
        if checks and sketch.likely(0.6):
            own.append(sketch.part(f"check-{letter}", "check_valve", height=sketch.plant))
        own.append(_heater(sketch, recipe, f"heater-{letter}", large=large))
        own += [sketch.part(f"hot-{letter}", "valve", height=sketch.plant)] if valves else []
        branches.append(own)
    hot = sketch.part("hot-header", "tee", height=sketch.plant)
    for own in branches:
        sketch.run(cold, *own, hot)
    return hot


def _heater(sketch: Sketch, recipe: Recipe, name: str, *, large: bool) -> str:
    usual = sketch.usual
    setpoint = sketch.temperature(sketch.pick(usual.setpoints))
    if sketch.likely(recipe.tankless):
        heater_input = sketch.pick(usual.tankless_inputs)
        kind, volume = "tankless_heater", {}
    else:
        size = sketch.pick(usual.large_storage_heaters if large else usual.storage_heaters)
        heater_input = size.input
        kind, volume = "storage_heater", {"volume": sketch.volume(size.volume)}
    valve = relief(sketch, heater_input, usual.relief_pressure)
    own: dict[str, object] = {} if sketch.likely(recipe.bare) else {"relief": valve}
    return sketch.part(
        name, kind, height=sketch.plant, **volume, setpoint=setpoint, input=sketch.power(heater_input), **own
    )
