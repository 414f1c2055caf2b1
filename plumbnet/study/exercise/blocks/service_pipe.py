"""The service pipe from the street to where the building's own piping begins, with a tap outdoors."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot

CHECK = ("check", "check_valve")
ASSEMBLIES = (
    ("dual-check", "dual_check"),
    ("double-check", "double_check"),
    ("rp", "reduced_pressure_assembly"),
    ("vented-check", "vented_dual_check"),
)
TREATMENT = (("softener", "softener"), ("filter", "filter"))


def service(sketch: Sketch, recipe: Recipe, *, ends: str = "split") -> None:
    """Main, meter, stop, and what stands behind them, in the order of flow, to the tee `ends`; a tap in the yard."""
    usual, high = sketch.usual, sketch.likely(recipe.high_main)
    sketch.line = sketch.pick(usual.high_mains if high else usual.mains)
    temperature = sketch.temperature(sketch.pick(usual.main_temperatures))
    street = sketch.part("street", "main", pressure=sketch.pressure(sketch.line), temperature=temperature)
    meters = _meters(sketch, recipe)
    line = [street, meters.pop(), sketch.part("stop", "valve"), sketch.hanger(Spot.SERVICE)]
    yard, spare = line[-1], [*meters]
    half = len(usual.reducer_sets) // 2
    held, other = sketch.chance.sample(
        (sketch.pick(usual.reducer_sets[:half]), sketch.pick(usual.reducer_sets[half:])), 2
    )
    if sketch.likely(recipe.second_reducer):
        spare.append(_reducer(sketch, recipe, other))
    if sketch.likely(1.0 - recipe.unreduced if high else recipe.reducer):
        sketch.line = min(sketch.line, held)
        line.append(_reducer(sketch, recipe, held))
    if sketch.likely(recipe.booster):
        line.append(sketch.part("booster", "booster_pump", rise=sketch.pressure(sketch.pick(usual.boosts))))
    if sketch.likely(recipe.backflow):
        line.append(sketch.part(*(sketch.pick(ASSEMBLIES) if sketch.likely(recipe.assembly) else CHECK)))
    if sketch.likely(recipe.treatment):
        line.append(sketch.part(*sketch.pick(TREATMENT)))
    sketch.run(*line, sketch.part(ends, "tee"), place=Spot.SERVICE)
    if sketch.likely(recipe.yard_check):
        spare.append(sketch.part(*CHECK))
    if sketch.likely(recipe.vacuum_breaker):
        spare.append(sketch.part("breaker", "vacuum_breaker"))
    _yard(sketch, yard, spare)


def _meters(sketch: Sketch, recipe: Recipe) -> list[str]:
    """The meter of the service, and perhaps one that deducts what a yard takes; one of two has a check in it."""
    if not sketch.likely(recipe.second_meter):
        return [sketch.part("meter", "meter")]
    return [sketch.part("meter", "meter", check=True), sketch.part("meter", "meter")]


def _yard(sketch: Sketch, tee: str, devices: list[str]) -> None:
    """A tap outdoors, from the service; what may stand before it may stand in the building as well."""
    tap = sketch.part("yard-tap", "fixture", height=sketch.usual.tap)
    sketch.run(tee, *devices, f"{tap}.cold", place=Spot.YARD)


def _reducer(sketch: Sketch, recipe: Recipe, held: int) -> str:
    bypass: dict[str, bool] = {"bypass": True} if sketch.likely(recipe.bypass) else {}
    return sketch.part("reducer", "pressure_reducer", set=sketch.pressure(held), **bypass)
