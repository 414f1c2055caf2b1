"""The hot and cold pipes behind the heaters: a mixing valve, the taps, a circulation."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot
from plumbnet.study.exercise.town import ROOMS
from plumbnet.study.exercise.usual_sizes import RoundNumber

_MOST_FLOORS = 3


def taps(sketch: Sketch, recipe: Recipe, hot: str, *, circulated: bool) -> None:
    """Fixtures on the hot tee and on the tee `split`, and the circulation back to `return`."""
    usual = sketch.usual
    floors = sketch.pick(range(1, _MOST_FLOORS + 1)) if sketch.likely(recipe.heights) else 1
    cold = sketch.part("cold-tee", "tee")
    sketch.run("split", cold, place=Spot.COLD)
    near = sketch.part("near-tee", "tee", height=usual.floor * (floors - 1))
    valve = [sketch.part("hot-stop", "valve")] if sketch.likely(recipe.hot_valve) else []
    sketch.run(hot, *valve, near, place=Spot.HOT, pipe=sketch.pick(usual.tubes), length=sketch.pick(usual.lengths))
    serves = _mixed(sketch, near, cold) if sketch.likely(recipe.mixing) else near
    rooms = sketch.chance.sample(ROOMS, sketch.pick((2, 2, 3)) + (floors > 1))
    valved = sketch.pick(rooms) if sketch.likely(recipe.tap_valve) else ""
    for room in rooms:
        height = usual.tap + usual.floor * sketch.pick(range(floors))
        _tap(sketch, room, (serves, cold), height, valved=room == valved)
    if circulated:
        _circulation(sketch, near)


def _tap(sketch: Sketch, room: str, tees: tuple[str, str], height: RoundNumber, *, valved: bool) -> None:
    """A fixture on a hot and a cold tee, perhaps with a stop in one of its pipes."""
    fixture = sketch.part(room, "fixture", height=height)
    stop = [sketch.part(f"{room}-stop", "valve")] if valved else []
    hot_stop = stop if sketch.likely(0.5) else []
    sketch.run(tees[0], *hot_stop, f"{fixture}.hot", place=Spot.HOT_TAP)
    sketch.run(tees[1], *(one for one in stop if one not in hot_stop), f"{fixture}.cold", place=Spot.TAP)


def _mixed(sketch: Sketch, hot: str, cold: str) -> str:
    """A mixing valve between hot and cold; the tee behind it."""
    unchecked: dict[str, bool] = {"checks": False} if sketch.likely(0.5) else {}
    mixer = sketch.part("mixer", "mixing_valve", **unchecked)
    mixed = sketch.part("mixed-tee", "tee")
    sketch.run(hot, f"{mixer}.hot")
    sketch.run(cold, f"{mixer}.cold")
    sketch.run(mixer, mixed)
    return mixed


def _circulation(sketch: Sketch, far: str) -> None:
    """A pump that brings hot water from the far end back to the heaters' cold side."""
    usual = sketch.usual
    checked: dict[str, bool] = {"check": True} if sketch.likely(0.5) else {}
    pump = sketch.part("pump", "circulator", **checked)
    sketch.run(far, pump, "return", place=Spot.RETURN, pipe=usual.circulation_tube, length=sketch.pick(usual.lengths))
