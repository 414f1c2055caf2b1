"""Which device stops a heater's water on its way out."""

from collections.abc import Iterator

from plumbnet.layout.model import Part
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, heaters, question, reducer_note

NOTHING = "nothing"
_DEVICES = (
    NOTHING,
    "booster_pump",
    "check_valve",
    "circulator",
    "double_check",
    "dual_check",
    "filling_loop",
    "filter",
    "meter",
    "mixing_valve",
    "pressure_reducer",
    "reduced_pressure_assembly",
    "softener",
    "valve",
    "vented_dual_check",
)
OUTCOMES = {1: (NOTHING, "check_valve", "valve"), 2: _DEVICES, 3: _DEVICES, 4: _DEVICES, 5: _DEVICES}
LEANS = {
    0: {"own_check": 0.6, "yard_check": 0.8, "second_meter": 0.6, "tank": 0.3, "spill": 0.1},
    1: {"own_check": 0.8, "yard_check": 1.0, "second_meter": 0.0, "tank": 0.0, "spill": 0.0},
}


@question("stopper", OUTCOMES, fewest=dict.fromkeys(OUTCOMES, 3), leans=LEANS)
def stopper(world: World) -> Iterator[Asked]:
    """Which device stops the growing water on its way to the street?"""
    parts = world.report.system.parts
    for heater in heaters(world):
        stops = heater.stopped_by
        if heater.verdict is Verdict.OPEN:
            yield _asked(world, heater, NOTHING, NOTHING)
        elif len(stops.sets) == 1 and not stops.more and len(stops.sets[0]) == 1:
            (device,) = stops.sets[0]
            yield _asked(world, heater, device, parts[device].kind)


def _asked(world: World, heater: HeaterFacts, device: str, outcome: str) -> Asked:
    in_line = [name for name, part in world.report.system.parts.items() if _is_in_line(part)]
    prompt = (
        f"Every fixture is shut. When water grows in {heater.name}, which device stops it on its way back to the "
        f"street, if any does?{reducer_note(world)}"
    )
    blank = Choice("It is stopped by", (*in_line, NOTHING), device)
    return Asked(prompt, (blank,), outcome, (_because(world, heater, device),), heater.name)


def _is_in_line(part: Part) -> bool:
    """Whether a part stands in a pipe and could be thought to stop water."""
    plain = part.is_fitting or part.is_vessel or part.heat() is not None or bool(part.draws_at())
    return not plain and len(part.port_names()) > 1


def _because(world: World, heater: HeaterFacts, device: str) -> str:
    if device == NOTHING:
        way = next(rung for rung in heater.ladder if rung.role.is_way_out)
        return f"The water passes everything as far as {way.outlet}: {' > '.join(way.way)}."
    kind = world.report.system.parts[device].kind.replace("_", " ")
    return f"Of all devices on the way only {device}, a {kind}, does not let the water back."
