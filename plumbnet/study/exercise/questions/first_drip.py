"""From what the first drop falls while a heater warms, and after how many minutes."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.warmup import HeaterWarmup, NoWarmUp, warm_up
from plumbnet.layout.model import Role
from plumbnet.layout.units import MINUTE, TIME, customary
from plumbnet.physics.fluids import enthalpy_j_kg, growth, specific_volume_m3_kg
from plumbnet.physics.vessels import USUAL_EFFICIENCY
from plumbnet.physics.warmup import WarmupHappening
from plumbnet.rules import listed
from plumbnet.rules.facts import HeaterFacts, RungFacts
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.question import Asked, World, heaters, question, reducer_note

NOTHING = "nothing"
_OUTCOMES = (NOTHING, Role.EXPANSION_RELIEF.value, Role.SAFETY_RELIEF.value)
OUTCOMES = {2: _OUTCOMES}
LEANS = {
    0: {
        "tank": 0.5,
        "spill": 1.0,
        "both": 1.0,
        "small_tank": 1.0,
        "own_check": 0.8,
        "yard_check": 0.8,
        "tankless": 0.0,
        "annex_tankless": 0.0,
        "circulation": 0.0,
        "cistern": 0.0,
    }
}
_THIN_PA = 35_000.0
"""A pressure so near that at which something opens that whether it does would hang on arithmetic."""
_SOON_S = 30.0
_LATE = 0.9
"""Share of the time until all is hot after which a first drop might as well not fall."""
_LEEWAY = 0.1
"""Share by which the minutes may be off, beside what walls leave open; a minute at the least."""
_AT_PA = 400e3
"""At which the growth in the question is reckoned, absolute; it hangs hardly on it."""
_TOLD = (0.25, 0.5, 1.0)
"""Shares of the time until a heater is hot of which the growth is told."""
_GIVES_WAY = {"us": "100 psi", "metric": "690 kPa"}
"""For how much pressure water without air and its walls, as they are usual, give way by a thousandth of its volume.

Water alone gives way by a third of that (IAPWS R7-97), in walls as they are by half as much again.
"""


def _untimed(world: World) -> Iterator[Asked]:
    """The same without the minutes, which cost much to find."""
    for heater in heaters(world):
        drop = _likely(heater)
        if drop is not None:
            yield _asked(world, heater, drop)


@question("first-drip", OUTCOMES, fewest=dict.fromkeys(OUTCOMES, 3), leans=LEANS, quick=_untimed)
def first_drip(world: World) -> Iterator[Asked]:
    """From what does the first drop fall while a heater warms, and after how many minutes?"""
    for heater in heaters(world):
        drop = _likely(heater)
        if drop is not None and drop.rung is not None:
            drop = _timed(world, heater, drop.rung)
        if drop is not None:
            yield _asked(world, heater, drop)


@dataclass(frozen=True, slots=True)
class _Drop:
    """From what it falls, nothing where there is no rung; when it does in rigid walls, and in walls as they are."""

    rung: RungFacts | None = None
    rigid_s: float = 0.0
    walls_s: float = 0.0


def _dripping(heater: HeaterFacts) -> RungFacts | None:
    """The valve that would let growth off before anything takes any amount of it; None where there is none."""
    for rung in heater.ladder:
        if rung.role.is_way_out:
            return None
        if rung.role.is_relief:
            return rung
    return None


def _likely(heater: HeaterFacts) -> _Drop | None:
    """From what the first drop falls, by the pressures alone; None where that hangs on arithmetic, or nothing heats."""
    rung = _dripping(heater)
    if heater.on_flow or heater.static_pa is None:
        return None
    if rung is None:
        return _Drop()
    if heater.tanks and heater.settled_pa is not None and heater.settled_pa < rung.opens_pa - 1.0:
        return _Drop() if heater.settled_pa < rung.opens_pa - _THIN_PA else None
    return _Drop(rung) if heater.static_pa < rung.opens_pa - _THIN_PA else None


def _timed(world: World, heater: HeaterFacts, rung: RungFacts) -> _Drop | None:
    """The first drop with its minutes; None where it falls from anything else, too soon, or when all but hot."""
    try:
        warming = warm_up(world.report, heater.name)
    except NoWarmUp:
        return None
    times = [_falls_s(run, rung.outlet) for run in warming.bracket]
    if None in times:
        return None
    rigid_s, walls_s = (time or 0.0 for time in times)
    hot_s = min(warming.hot_after_s(one) or 0.0 for one in warming.fired)
    return _Drop(rung, rigid_s, walls_s) if rigid_s >= _SOON_S and walls_s <= _LATE * hot_s else None


def _falls_s(run: HeaterWarmup, outlet: str) -> float | None:
    """When the first drop falls; None where it falls from anything else."""
    first = run.run.first(WarmupHappening.OUTLET_OPENS, None)
    return first.time_s if first is not None and first.name == outlet else None


def _asked(world: World, heater: HeaterFacts, drop: _Drop) -> Asked:
    parts, rung = world.report.system.parts, drop.rung
    valves = [name for name, part in parts.items() if any(one.role.is_relief for one in part.outlets())]
    right = NOTHING if rung is None else rung.outlet
    middle_s, half_s = (drop.rigid_s + drop.walls_s) / 2.0, (drop.walls_s - drop.rigid_s) / 2.0
    blanks = (
        Choice("The first drop falls from", (*valves, NOTHING), right),
        Measure(
            "If one falls, then after about",
            TIME,
            None if rung is None else middle_s,
            half_s + max(MINUTE, _LEEWAY * middle_s),
        ),
    )
    outcome = NOTHING if rung is None else rung.role.value
    return Asked(_prompt(world, heater), blanks, outcome, _because(world, heater, drop), heater.name)


def _prompt(world: World, heater: HeaterFacts) -> str:
    """What is asked; whose water pushes, from what pressure and into what is to be read off the piping."""
    every = "and the burner lights" if len(world.report.heaters) == 1 else "and every burner lights"
    warming = " ".join(_warming(world, one) for one in world.report.heaters)
    pressure = _GIVES_WAY[customary(world.report.facts.units)]
    return (
        f"All is cold, every fixture is shut, {every}. {warming} Water without air and its walls give way by a "
        f"thousandth of the heater's volume for each {pressure}. From what does the growth of {heater.name} make the "
        f"first drop fall, if from anything, and after how many minutes?{reducer_note(world)}"
    )


def _heats_up_s(world: World, heater: HeaterFacts) -> float | None:
    """How long a heater takes from cold to its setpoint with no heat lost; None where that is not known."""
    source = world.report.system.parts[heater.name].heat()
    if source is None or not source.input_w or heater.cold_k is None:
        return None
    held_kg = heater.heated_volume_m3 / specific_volume_m3_kg(heater.cold_k, pressure_abs_pa=_AT_PA)
    hot, cold = (enthalpy_j_kg(at, pressure_abs_pa=_AT_PA) for at in (heater.hot_k, heater.cold_k))
    return held_kg * (hot - cold) / (source.input_w * USUAL_EFFICIENCY)


def _warming(world: World, heater: HeaterFacts) -> str:
    """How the water of a heater grows in time, by itself."""
    facts, lasts_s = world.report.facts, _heats_up_s(world, heater)
    if lasts_s is None or heater.cold_k is None:
        return ""
    grown = [
        f"{facts.volume(heater.heated_volume_m3 * growth(heater.cold_k, at_k, pressure_abs_pa=_AT_PA))} "
        f"after {round(share * lasts_s / MINUTE)} min"
        for share in _TOLD
        for at_k in (heater.cold_k + share * (heater.hot_k - heater.cold_k),)
    ]
    return f"The water of {heater.name} has grown by {listed(grown)}, when it is hot."


def _because(world: World, heater: HeaterFacts, drop: _Drop) -> tuple[str, ...]:
    facts, rung = world.report.facts, drop.rung
    if rung is None:
        takes = next((one for one in heater.ladder if not one.role.is_relief), None)
        first = "" if takes is None else f"{takes.outlet} takes it from {facts.pressure(takes.opens_pa)} on. "
        return (f"{first}Nothing that drips opens below what the water comes to.",)
    early, late = (round(time_s / MINUTE, 1) for time_s in (drop.rigid_s, drop.walls_s))
    yielding = "" if early == late else f" in rigid walls, {late:g} min in walls that yield"
    when = f"after {early:g} min{yielding}"
    room = f" {listed(list(heater.tanks))} takes up what it can before." if heater.tanks else ""
    return (f"{rung.outlet} opens at {facts.pressure(rung.opens_pa)}, {when}.{room}",)
