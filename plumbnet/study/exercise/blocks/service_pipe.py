"""The service pipe from the street to where the building's own piping begins."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch

CHECK = ("check", "check_valve")
ASSEMBLIES = (("dual-check", "dual_check"), ("double-check", "double_check"), ("rp", "reduced_pressure_assembly"))
TREATMENT = (("softener", "softener"), ("filter", "filter"))


def service(sketch: Sketch, recipe: Recipe) -> list[str]:
    """Main, meter, stop, and what stands behind them, in the order of flow; ends in the tee `split`."""
    usual, high = sketch.usual, sketch.likely(recipe.high_main)
    sketch.line = sketch.pick(usual.high_mains if high else usual.mains)
    temperature = sketch.temperature(sketch.pick(usual.main_temperatures))
    street = sketch.part("street", "main", pressure=sketch.pressure(sketch.line), temperature=temperature)
    checked: dict[str, bool] = {"check": True} if sketch.likely(recipe.meter_check) else {}
    line = [street, sketch.part("meter", "meter", **checked), sketch.part("stop", "valve")]
    if sketch.likely(1.0 - recipe.unreduced if high else recipe.reducer):
        line.append(_reducer(sketch, recipe))
    if sketch.likely(recipe.backflow):
        line.append(sketch.part(*(sketch.pick(ASSEMBLIES) if sketch.likely(recipe.assembly) else CHECK)))
    if sketch.likely(recipe.treatment):
        line.append(sketch.part(*sketch.pick(TREATMENT)))
    return [*line, sketch.part("split", "tee")]


def _reducer(sketch: Sketch, recipe: Recipe) -> str:
    held = sketch.pick(sketch.usual.reducer_sets)
    sketch.line = min(sketch.line, held)
    bypass: dict[str, bool] = {"bypass": True} if sketch.likely(recipe.bypass) else {}
    return sketch.part("reducer", "pressure_reducer", set=sketch.pressure(held), **bypass)
