"""An indirect heater for the taps, and the boiler that warms it with its own heating circuit."""

from plumbnet.study.exercise.blocks.heater_plant import relief, relief_apart
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot

EMITTERS = ("hall", "parlor", "bedroom", "office")


def heating(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """The indirect heater at the end of the cold pipe, and the boiler's circuit, filled from `split`; the hot tee."""
    usual = sketch.usual
    boiler_input = sketch.pick(usual.boiler_inputs)
    indirect = sketch.part(
        "indirect",
        "indirect_heater",
        height=sketch.plant,
        volume=sketch.volume(sketch.pick(usual.indirect_volumes)),
        coil_volume=sketch.volume(usual.coil_volume),
        setpoint=sketch.temperature(sketch.pick(usual.setpoints)),
        input=sketch.power(boiler_input),
        **(
            {}
            if sketch.likely(recipe.bare)
            else {"relief": relief(sketch, boiler_input, sketch.pick(usual.relief_pressures))}
        ),
    )
    hot = sketch.part("hot", "tee", height=sketch.plant)
    sketch.run("split", *line, *relief_apart(sketch, indirect), indirect, place=Spot.FEED)
    sketch.run(indirect, hot, place=Spot.HOT)
    _boiler(sketch, boiler_input)
    _filled(sketch)
    _driven(sketch, indirect)
    return hot


def _boiler(sketch: Sketch, boiler_input: int) -> None:
    usual = sketch.usual
    sketch.part(
        "boiler",
        "boiler",
        height=sketch.plant,
        volume=sketch.volume(sketch.pick(usual.boiler_volumes)),
        setpoint=sketch.temperature(sketch.pick(usual.boiler_setpoints)),
        input=sketch.power(boiler_input),
        relief=relief(sketch, boiler_input, usual.boiler_relief),
    )


def _filled(sketch: Sketch) -> None:
    """What the circuit is filled by, and its tank."""
    usual, height = sketch.usual, sketch.plant
    by_what = _loop(sketch) if usual.is_filled_by_hand else _line(sketch)
    sketch.run("split", *by_what, sketch.part("air-tee", "tee", height=height))
    volume = sketch.volume(sketch.pick(usual.heating_tank_sizes))
    charge = sketch.pressure(sketch.pick(usual.heating_tank_charges))
    worn: dict[str, object] = {"state": "waterlogged"} if sketch.likely(0.15) else {}
    tank = sketch.part("heating-tank", "expansion_tank", height=height, volume=volume, precharge=charge, **worn)
    sketch.run("air-tee", tank)


def _loop(sketch: Sketch) -> list[str]:
    fill = sketch.pressure(sketch.usual.boiler_fill)
    return [sketch.part("filling-loop", "filling_loop", height=sketch.plant, fill=fill)]


def _line(sketch: Sketch) -> list[str]:
    """A filling line that stands open, with its backflow preventer and its reducer."""
    fill = sketch.pressure(sketch.usual.boiler_fill)
    return [
        sketch.part("fill-stop", "valve", height=sketch.plant),
        sketch.part("fill-rp", "reduced_pressure_assembly", height=sketch.plant),
        sketch.part("fill-reducer", "pressure_reducer", height=sketch.plant, set=fill),
    ]


def _driven(sketch: Sketch, indirect: str) -> None:
    """The two circuits that pumps drive: through the emitters, and through the coil."""
    usual = sketch.usual
    supply = sketch.part("supply-tee", "tee", height=sketch.plant)
    pumps = [
        sketch.part(name, "circulator", height=sketch.plant, check=True) for name in ("radiator-pump", "coil-pump")
    ]
    rooms = sketch.chance.sample(EMITTERS, sketch.pick((2, 3)))
    emitters = [
        sketch.part(
            name,
            "emitter",
            height=usual.tap + usual.floor * sketch.pick((0, 0, 1)),
            volume=sketch.volume(sketch.pick(usual.emitter_volumes)),
        )
        for name in rooms
    ]
    back = sketch.part("return-header", "tee", height=sketch.plant)
    sketch.run("boiler", "air-tee", supply)
    sketch.run(supply, pumps[0], *emitters, back, pipe=usual.heating_tube, length=sketch.pick(usual.heating_lengths))
    sketch.run(supply, pumps[1], f"{indirect}.coil_in")
    sketch.run(f"{indirect}.coil_out", back, "boiler")
