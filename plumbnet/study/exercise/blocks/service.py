"""The service pipe from the street to where the building's own piping begins."""

from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual import HIGH_MAINS_PSI, MAIN_TEMPERATURES_F, MAINS_PSI, REDUCER_SETS_PSI

CHECK = ("check", "check_valve")
ASSEMBLIES = (
    ("dual-check", "dual_check"),
    ("double-check", "double_check"),
    ("rp", "reduced_pressure_assembly"),
)
TREATMENT = (("softener", "softener"), ("filter", "filter"))


def service(sketch: Sketch, recipe: Recipe) -> list[str]:
    """Main, meter, stop, and what stands behind them, in the order of flow; ends in the tee `split`."""
    high = sketch.likely(recipe.high_main)
    main_psi = sketch.pick(HIGH_MAINS_PSI if high else MAINS_PSI)
    fahrenheit = sketch.pick(MAIN_TEMPERATURES_F)
    sketch.line_psi = main_psi
    street = sketch.part("street", "main", pressure=f"{main_psi} psi", temperature=f"{fahrenheit} degF")
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
    set_psi = sketch.pick(REDUCER_SETS_PSI)
    sketch.line_psi = min(sketch.line_psi, set_psi)
    bypass: dict[str, bool] = {"bypass": True} if sketch.likely(recipe.bypass) else {}
    return sketch.part("reducer", "pressure_reducer", set=f"{set_psi} psi", **bypass)
