"""A cylinder or plates for the taps' water, and the boiler that warms it with its own heating circuit."""

from plumbnet.study.exercise.blocks.heater_plant import relief, relief_apart
from plumbnet.study.exercise.level import Recipe
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock import Spot

_NAMES = {"indirect_heater": "indirect", "heat_exchanger": "exchanger"}
EMITTERS = ("hall", "parlor", "bedroom", "office")


def heating(sketch: Sketch, recipe: Recipe, line: list[str]) -> str:
    """What the boiler heats the taps' water in, and the boiler's circuit, filled from `split`; the hot tee."""
    boiler_input = sketch.pick(sketch.usual.boiler_inputs)
    if sketch.likely(recipe.plate):
        heater, coil = _exchanger(sketch, recipe, boiler_input), ("primary_in", "primary_out")
    else:
        heater, coil = cylinder(sketch, recipe, boiler_input), ("coil_in", "coil_out")
    hot = served(sketch, line, heater)
    _boiler(sketch, boiler_input)
    _filled(sketch)
    _driven(sketch, heater, coil)
    return hot


def cylinder(sketch: Sketch, recipe: Recipe, heater_input: int) -> str:
    """A store of tap water with a coil in it."""
    usual = sketch.usual
    volumes = {
        "volume": sketch.volume(sketch.pick(usual.indirect_volumes)),
        "coil_volume": sketch.volume(usual.coil_volume),
    }
    return _heated(sketch, recipe, heater_input, {"kind": "indirect_heater", **volumes})


def served(sketch: Sketch, line: list[str], heater: str) -> str:
    """A heater at the end of the cold pipe, its relief valve apart where it has none; the tee behind it."""
    hot = sketch.part("hot", "tee", height=sketch.plant)
    sketch.run("split", *line, *relief_apart(sketch, heater), heater, place=Spot.FEED)
    sketch.run(heater, hot, place=Spot.HOT)
    return hot


def _exchanger(sketch: Sketch, recipe: Recipe, heater_input: int) -> str:
    """Plates between the boiler's water and the taps', which hold next to nothing."""
    held = sketch.volume(sketch.usual.plate_volume)
    volumes = {"volume": held, "primary_volume": held}
    return _heated(sketch, recipe, heater_input, {"kind": "heat_exchanger", **volumes})


def _heated(sketch: Sketch, recipe: Recipe, heater_input: int, made: dict[str, str]) -> str:
    usual = sketch.usual
    setpoint, power = sketch.temperature(sketch.pick(usual.setpoints)), sketch.power(heater_input)
    bare = sketch.likely(recipe.bare)
    own = {} if bare else {"relief": relief(sketch, heater_input, sketch.pick(usual.relief_pressures))}
    fields: dict[str, object] = {**made, "setpoint": setpoint, "input": power, **own}
    return sketch.part(_NAMES[made["kind"]], str(fields.pop("kind")), height=sketch.plant, **fields)


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


def _driven(sketch: Sketch, heater: str, coil: tuple[str, str]) -> None:
    """The two circuits that pumps drive: through the emitters, and through the coil between two connections."""
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
    sketch.run(supply, pumps[1], f"{heater}.{coil[0]}")
    sketch.run(f"{heater}.{coil[1]}", back, "boiler")
