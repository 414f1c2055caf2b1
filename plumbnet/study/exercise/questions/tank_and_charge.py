"""Which expansion tank a heater needs: its size and its charge."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE, VOLUME, customary, show
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import nominal_sizes
from plumbnet.rules import listed, place
from plumbnet.rules.facts import HeaterFacts, Need, Verdict
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.question import Asked, World, heaters, question

NO_TANK = "no tank can do it"
_SMALL = ("size 1", "size 2", "size 3", "size 4", NO_TANK)
OUTCOMES = {2: _SMALL, 3: _SMALL, 4: ("size 3", "size 4", "size 5", "size 6", NO_TANK), 5: _SMALL}
"""Sizes by their place among those offered, so that they are the same in all units."""
_NO_CONTROL = {"tank": 0.0, "spill": 0.0, "boiler": 0.0, "backflow": 0.8, "tankless": 0.05}
LEANS = {size: _NO_CONTROL for sizes in OUTCOMES.values() for size in sizes} | {
    NO_TANK: _NO_CONTROL | {"high_main": 0.9, "unreduced": 0.9, "reducer": 0.0}
}
TOLERANCE_PA = 10_000.0
"""How far the charge may be off, in pascal: 1.5 psi."""
_SAME_PA = 500.0
"""Pressures closer than this stand at one height."""
_SAME_SHARE = 0.02
"""Share by which the tank may differ from what the printed numbers give."""
_SIZES = 8
"""Sizes offered, from the smallest up."""


@question("tank", OUTCOMES, leans=LEANS)
def tank(world: World) -> Iterator[Asked]:
    """Which expansion tank does a heater need: what size, and charged to what?"""
    parts = world.report.system.parts
    if any(part.cushion() is not None for part in parts.values()):
        return
    for heater in heaters(world):
        need, static_pa = heater.need, heater.static_pa
        if heater.verdict is not Verdict.TRAPPED or need is None or static_pa is None:
            continue
        if abs(need.precharge_pa - static_pa) <= _SAME_PA:
            yield from _asked(world, heater, need, static_pa)


def _asked(world: World, heater: HeaterFacts, need: Need, static_pa: float) -> Iterator[Asked]:
    units = world.report.facts.units
    room = 1.0 - (static_pa + ATMOSPHERE_PA) / (heater.limit_pa + ATMOSPHERE_PA)
    grown_m3 = heater.shared_expansion_m3
    if need.tank_m3 is not None and abs(need.tank_m3 * room - grown_m3) > _SAME_SHARE * grown_m3:
        return
    sizes = tuple(show(size, VOLUME, units) for size in nominal_sizes(customary(units))[:_SIZES])
    right = NO_TANK if need.nominal_m3 is None else show(need.nominal_m3, VOLUME, units)
    charge_pa = None if need.tank_m3 is None else need.precharge_pa
    blanks = (
        Choice("The smallest size that will do is", (*sizes, NO_TANK), right),
        Measure("If a tank can do it, it is charged to", PRESSURE, charge_pa, TOLERANCE_PA),
    )
    if right in blanks[0].options:
        outcome = NO_TANK if right == NO_TANK else f"size {sizes.index(right) + 1}"
        because = _because(world, heater, need, static_pa)
        yield Asked(_prompt(world, heater, need, static_pa), blanks, outcome, because, heater.name)


def _prompt(world: World, heater: HeaterFacts, need: Need, static_pa: float) -> str:
    facts = world.report.facts
    served = sorted({heater.name, *need.serves})
    whose = f"the water of {listed(served)}"
    return (
        f"An expansion tank is to be fitted {place(need.at)}. Cold, {heater.name} stands at "
        f"{facts.pressure(static_pa)}; the limit is {facts.pressure(heater.limit_pa)}; until all is hot {whose} grows "
        f"by {facts.volume(heater.shared_expansion_m3)}. Which tank is it?"
    )


def _because(world: World, heater: HeaterFacts, need: Need, static_pa: float) -> tuple[str, ...]:
    facts = world.report.facts
    if need.tank_m3 is None:
        return ("Cold, the water stands at the limit already. First the static pressure must come down.",)
    start, end = (facts.pressure(pressure + ATMOSPHERE_PA) for pressure in (static_pa, heater.limit_pa))
    grown, least = facts.volume(heater.shared_expansion_m3), facts.volume(need.tank_m3)
    charge = (
        "The charge is the pressure that stands at the tank cold, so that the tank is empty then and takes its first "
        "water as soon as the pressure climbs."
    )
    size = (
        f"By Boyle's law, in absolute pressures, the tank holds at least {grown} / (1 - {start} / {end}) = {least}; "
        f"the next size up is {facts.volume(need.nominal_m3 or need.tank_m3)}."
    )
    return charge, size
