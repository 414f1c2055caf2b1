"""Which outlet opens first, and at what pressure."""

from collections.abc import Iterator

from plumbnet.layout.model import Role
from plumbnet.layout.units import PRESSURE
from plumbnet.rules.facts import HeaterFacts, RungFacts
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.question import Asked, World, heaters, question, reducer_note

STREET, TANK, SAFETY = Role.STREET.value, Role.TANK.value, Role.SAFETY_RELIEF.value
_ALL = (STREET, TANK, Role.EXPANSION_RELIEF.value, SAFETY)
OUTCOMES = {1: (STREET, SAFETY), 2: _ALL, 3: _ALL, 4: _ALL}
LEANS = {
    0: {"own_check": 0.7, "yard_check": 0.7, "tank": 0.95, "overcharged": 0.8, "spill": 0.0, "bypass": 0.8},
    1: {"tank": 0.0},
}
TOLERANCE_PA = 10_000.0
"""How far a pressure may be off, in pascal: 1.5 psi, as a gauge is read."""
_APART_PA = 14_000.0
"""How far the second outlet must lie above the first, so that there is a first."""


@question("opens-first", OUTCOMES, fewest={1: 2, 2: 3, 3: 3, 4: 3}, leans=LEANS)
def opens_first(world: World) -> Iterator[Asked]:
    """Which outlet does the growing water open first, and at what pressure, read at the heater?"""
    for heater in heaters(world):
        if heater.on_flow or not heater.ladder:
            continue
        first, *others = heater.ladder
        if all(rung.opens_pa >= first.opens_pa + _APART_PA for rung in others):
            yield _asked(world, heater, first)


def _asked(world: World, heater: HeaterFacts, first: RungFacts) -> Asked:
    facts = world.report.facts
    outlets = tuple(name for name, part in world.report.system.parts.items() if any(part.outlets()) or part.cushion())
    blanks = (
        Choice("The first to open is", outlets, first.outlet),
        Measure("It opens at", PRESSURE, first.opens_pa, TOLERANCE_PA),
    )
    prompt = (
        f"Every fixture is shut, {heater.name} heats up, and the pressure climbs. What does the water open first, "
        f"and at what pressure, as a gauge at {heater.name} reads it?{reducer_note(world)}"
    )
    beyond = ", which is past the limit" if first.opens_pa > max(heater.limit_pa, heater.static_pa or 0.0) else ""
    because = f"Of all it can come to, {first.outlet} opens lowest: at {facts.pressure(first.opens_pa)}{beyond}."
    return Asked(prompt, blanks, first.role.value, (because,), heater.name)
