"""Which expansion tank a heater needs: its size and its charge."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE, VOLUME, customary, show
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import nominal_sizes
from plumbnet.rules import listed, place
from plumbnet.rules.facts import Facts, HeaterFacts, Need, Verdict
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.question import Asked, World, heaters, question, reducer_note

NO_TANK = "no tank can do it"
_SIZES = 10
"""Sizes offered at most, from the smallest up."""
_ANSWERS = (*(f"size {number}" for number in range(1, _SIZES + 1)), NO_TANK)
OUTCOMES = {2: _ANSWERS, 3: _ANSWERS, 4: _ANSWERS, 5: _ANSWERS}
"""Sizes by their place in the series, so that they are the same in all units."""
_TWO_HEATERS = {"annex": 0.7, "annex_check": 0.6}
LEANS = {
    0: {
        "tank": 0.0,
        "spill": 0.0,
        "boiler": 0.0,
        "solar": 0.0,
        "cistern": 0.0,
        "tankless": 0.0,
        "annex_tankless": 0.0,
        "circulation": 0.0,
        "mixing": 0.0,
        "bare": 0.0,
        "second_reducer": 1.0,
        "reducer": 1.0,
        "high_main": 0.8,
        "unreduced": 0.0,
        "bypass": 0.1,
        "own_check": 0.7,
    },
    3: _TWO_HEATERS,
    4: _TWO_HEATERS | {"shared": 0.5},
    5: _TWO_HEATERS,
}
TOLERANCE_PA = 10_000.0
"""How far the charge may be off, in pascal: 1.5 psi."""
_SAME_PA = 500.0
"""Pressures closer than this stand at one height."""
_SAME_SHARE = 0.02
"""Share by which the tank may differ from what the printed numbers give."""
_CLEAR = 0.05
"""Share by which the least tank must differ from every size there is."""


@question("tank", OUTCOMES, fewest=dict.fromkeys(OUTCOMES, 3), leans=LEANS, as_it_is=True)
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
    series = nominal_sizes(customary(units))
    if need.tank_m3 is not None and any(abs(need.tank_m3 / size - 1.0) < _CLEAR for size in series):
        return
    sizes = tuple(show(size, VOLUME, units) for size in series[:_SIZES])
    right = NO_TANK if need.nominal_m3 is None else show(need.nominal_m3, VOLUME, units)
    charge_pa = None if need.tank_m3 is None else need.precharge_pa
    blanks = (
        Choice("The smallest of these sizes that will do is", (*sizes, NO_TANK), right),
        Measure("If a tank can do it, it is charged to", PRESSURE, charge_pa, TOLERANCE_PA),
    )
    if right in blanks[0].options:
        outcome = NO_TANK if right == NO_TANK else f"size {sizes.index(right) + 1}"
        because = _because(world, heater, need, static_pa)
        yield Asked(_prompt(world, heater, need), blanks, outcome, because, heater.name)


def _prompt(world: World, heater: HeaterFacts, need: Need) -> str:
    """What is asked; what the tank stands at cold, and whose water comes to it, is to be read off the piping."""
    facts = world.report.facts
    limit, growths = facts.pressure(heater.limit_pa), _growths(facts)
    return (
        f"{heater.name} is trapped, and you hang an expansion tank {place(need.at)}, level with {heater.name}. With "
        f"every fixture shut and every heater hot, {heater.name} may come to {limit} and no higher. From cold to hot "
        f"the water grows by {growths}. What is the smallest tank that will do, and what do you charge it to before "
        f"it goes up?{reducer_note(world)}"
    )


def _growths(facts: Facts) -> str:
    """What the water of each heater grows by, whichever of it comes together."""
    told = listed([f"{facts.volume(one.expansion_m3)} in {one.name}" for one in facts.heaters])
    return told if len(facts.heaters) == 1 else f"{told}, each by itself"


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
    served = listed(sorted({heater.name, *need.serves}))
    size = (
        f"The water of {served} comes to it; cold, it stands at {facts.pressure(static_pa)}. "
        f"By Boyle's law, in absolute pressures, the tank holds at least {grown} / (1 - {start} / {end}) = {least}; "
        f"the next size up is {facts.volume(need.nominal_m3 or need.tank_m3)}."
    )
    return charge, size
