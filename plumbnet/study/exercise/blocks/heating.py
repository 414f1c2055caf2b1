"""An indirect heater for the taps, and the boiler that warms it with its own heating circuit."""

from plumbnet.study.exercise.blocks.plant import relief
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual import (
    BOILER_FILL_PSI,
    BOILER_INPUTS_BTU_H,
    BOILER_RELIEF_PSI,
    FLOOR_FT,
    SETPOINTS_F,
    TAP_FT,
)

EMITTERS = ("hall", "parlor", "bedroom", "office")


def heating(sketch: Sketch, _recipe: Recipe, line: list[str]) -> str:
    """The indirect heater at the end of the cold pipe, and the boiler's circuit, filled from `split`; the hot tee."""
    input_btu_h = sketch.pick(BOILER_INPUTS_BTU_H)
    indirect = sketch.part(
        "indirect",
        "indirect_heater",
        height_ft=sketch.plant_ft,
        volume=f"{sketch.pick((30, 40, 60))} gal",
        coil_volume="1.5 gal",
        setpoint=f"{sketch.pick(SETPOINTS_F)} degF",
        input=f"{input_btu_h} Btu/h",
        relief=relief(input_btu_h),
    )
    hot = sketch.part("hot-tee", "tee", height_ft=sketch.plant_ft)
    sketch.run("split", *line, indirect, hot)
    _boiler(sketch, input_btu_h)
    _filled(sketch)
    _driven(sketch, indirect)
    return hot


def _boiler(sketch: Sketch, input_btu_h: int) -> None:
    sketch.part(
        "boiler",
        "boiler",
        height_ft=sketch.plant_ft,
        volume=f"{sketch.pick((4, 6, 8))} gal",
        setpoint=f"{sketch.pick((160, 180))} degF",
        input=f"{input_btu_h} Btu/h",
        relief=relief(input_btu_h, psi=BOILER_RELIEF_PSI),
    )


def _filled(sketch: Sketch) -> None:
    """The filling line, with its backflow preventer and reducer, and the tank of the circuit."""
    height_ft = sketch.plant_ft
    fill = [
        sketch.part("fill-stop", "valve", height_ft=height_ft),
        sketch.part("fill-rp", "reduced_pressure_assembly", height_ft=height_ft),
        sketch.part("fill-reducer", "pressure_reducer", height_ft=height_ft, set=f"{BOILER_FILL_PSI} psi"),
        sketch.part("air-tee", "tee", height_ft=height_ft),
    ]
    sketch.run("split", *fill)
    volume, charge = sketch.pick((2, 3, 5, 5, 8)), sketch.pick((BOILER_FILL_PSI, BOILER_FILL_PSI, 20))
    worn: dict[str, object] = {"state": "waterlogged"} if sketch.likely(0.15) else {}
    tank = sketch.part(
        "heating-tank", "expansion_tank", height_ft=height_ft, volume=f"{volume} gal", precharge=f"{charge} psi", **worn
    )
    sketch.run("air-tee", tank)


def _driven(sketch: Sketch, indirect: str) -> None:
    """The two circuits that pumps drive: through the emitters, and through the coil."""
    supply = sketch.part("supply-tee", "tee", height_ft=sketch.plant_ft)
    pumps = [
        sketch.part(name, "circulator", height_ft=sketch.plant_ft, check=True) for name in ("heat-pump", "water-pump")
    ]
    rooms = sketch.chance.sample(EMITTERS, sketch.pick((2, 3)))
    emitters = [
        sketch.part(
            name,
            "emitter",
            height_ft=TAP_FT + FLOOR_FT * sketch.pick((0, 0, 1)),
            volume=f"{sketch.pick((3, 4, 5))} gal",
        )
        for name in rooms
    ]
    back = sketch.part("return-header", "tee", height_ft=sketch.plant_ft)
    sketch.run("boiler", "air-tee", supply)
    sketch.run(supply, pumps[0], *emitters, back, pipe="copper-M 3/4 in", length_ft=sketch.pick((80, 100, 120)))
    sketch.run(supply, pumps[1], f"{indirect}.coil_in")
    sketch.run(f"{indirect}.coil_out", back, "boiler")
