"""Which device stops a heater's water on its way out."""

from collections.abc import Iterator, Mapping

from plumbnet.layout.model import OneWay, Part, Passage, Reducing, Role
from plumbnet.rules.facts import HeaterFacts, RungFacts, Verdict
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
        f"street{_or_out(world)}, if any does?{reducer_note(world)}"
    )
    blank = Choice("It is stopped by", (*in_line, NOTHING), device)
    return Asked(prompt, (blank,), outcome, (_because(world, heater, device),), heater.name)


def _or_out(world: World) -> str:
    """The other way out, where the list has something that stands open to the air."""
    outlets = (outlet for part in world.report.system.parts.values() for outlet in part.outlets())
    return " or out into the open air" if any(outlet.role is Role.AIR for outlet in outlets) else ""


def _is_in_line(part: Part) -> bool:
    """Whether a part stands in a pipe and could be thought to stop water."""
    plain = part.is_fitting or part.is_vessel or part.heat() is not None or bool(part.draws_at())
    return not plain and len(part.port_names()) > 1


def _because(world: World, heater: HeaterFacts, device: str) -> str:
    if device == NOTHING:
        return _free(world.report.system.parts, heater, next(rung for rung in heater.ladder if rung.role.is_way_out))
    kind = world.report.system.parts[device].kind.replace("_", " ")
    return f"Of all devices on the way only {device}, a {kind}, does not let the water back."


def _free(parts: Mapping[str, Part], heater: HeaterFacts, way: RungFacts) -> str:
    """Why nothing stops it, and the one device on that way to look at: the likeliest to be taken for a stop."""
    devices = [name for name in way.way if name in parts and _is_in_line(parts[name])]
    free = f"Nothing on the way from {heater.name} to {way.outlet} stands against the water."
    if not devices:
        return f"{free} No device stands in it at all."
    name = max(devices, key=lambda device: _suspicion(parts[device]))
    return f"{free} Look at {name}: {_lets_back(parts[name])}."


def _suspicion(part: Part) -> int:
    """How likely a device that stops no water is taken for one that does; 0 for a plain valve."""
    return 3 * (part.is_check or _has(part, OneWay)) + 2 * _has(part, Reducing) + (not part.is_valve())


def _lets_back(part: Part) -> str:
    """Why a device on the way out lets the water pass."""
    if _has(part, Reducing):
        return "its bypass opens once more stands behind it than before it"
    if _has(part, OneWay):
        return "the water meets it from the side from which it lets pass"
    return "its check is stuck open" if part.is_check else "as it stands, it lets water pass both ways"


def _has(part: Part, sort: type[Passage]) -> bool:
    return any(isinstance(passage, sort) for passage in part.passages())
