"""What a candidate would break by the way, set right with it: a valve locked, a tank charged anew, one more hung."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from plumbnet.analysis.required_tank import place_named
from plumbnet.layout.edits import change_of, pressure_text
from plumbnet.rules import listed
from plumbnet.rules.facts import PumpedFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types import added, tanks_in_words, wanted_charge_pa
from plumbnet.study.remedies.tank_joint import joint_at
from plumbnet.study.remedies.trial import Trial, tried

LOCKED = "valve-before-tank"
"""The finding of which a valve is rid that is locked open."""
CHARGED = "tank-charge-differs"
"""The finding of which a tank is rid that is charged to its line pressure."""
PUMPED = "pumped-up"
"""The finding of which a place is rid where a tank hangs before the check that keeps the water there."""


def proved(scene: RemedyContext, candidate: Candidate, heater: str) -> tuple[Candidate, Trial] | None:
    """The candidate, with what else has to be set right by the way, and its trial.

    None where it does not cure the heater, or makes a heater, a tap or a requirement worse.
    """
    trial = tried(scene, candidate.changes)
    for mend in MENDS:
        if trial is None or not trial.is_cured(heater):
            return None
        if trial.is_faultless:
            return candidate, trial
        candidate = mend(candidate, trial)
        trial = tried(scene, candidate.changes)
    return (candidate, trial) if trial is not None and trial.is_cured(heater) and trial.is_faultless else None


def locked_open(candidate: Candidate, trial: Trial) -> Candidate:
    """The same with each valve locked open that it puts between a heater and its tank against the rules."""
    valves = [one.parts[0] for one in trial.new_errors() if one.name == LOCKED]
    locks = tuple(change_of("set", {"part": name, "locked": True}) for name in valves)
    return candidate.along_with(f"lock {listed(valves)} open", locks) if locks else candidate


def charged_anew(candidate: Candidate, trial: Trial) -> Candidate:
    """The same with each tank charged to the pressure at which it leaves the water beside it."""
    tanks = [trial.after.tanks[name] for name in _charged_no_longer(trial)]
    system, facts = trial.after.system, trial.after.report.facts
    charges = [wanted_charge_pa(tank) for tank in tanks]
    changes = tuple(
        change_of("set", {"part": tank.name, "precharge": pressure_text(system, charge_pa)})
        for tank, charge_pa in zip(tanks, charges, strict=True)
    )
    told = listed([f"{tank.name} to {facts.pressure(charge)}" for tank, charge in zip(tanks, charges, strict=True)])
    return candidate.along_with(f"charge {told}", changes) if changes else candidate


def held_before_the_check(candidate: Candidate, trial: Trial) -> Candidate:
    """The same with a tank more, before the check through which heat-ups would pump what it cures above its limit."""
    pumped = max(_pumped_now(trial), key=lambda one: one.nominal_m3 or 0.0, default=None)
    if pumped is None or pumped.nominal_m3 is None:
        return candidate
    place = place_named(trial.after.network, pumped.at, "")
    joint = None if place is None else joint_at(trial.after, place, base=pumped.heaters[0])
    if joint is None:
        return candidate
    size_m3 = pumped.nominal_m3
    changes = (*joint.makes, *added(trial.after, joint, pumped.heaters[0], (size_m3,)))
    charge = trial.after.report.facts.pressure(pumped.precharge_pa)
    told = f"fit {tanks_in_words(trial.after, (size_m3,))}, charged to {charge}, {joint.where}"
    both = candidate.along_with(told, changes)
    return replace(both, effort=Effort.PAIR, size_m3=candidate.size_m3 + size_m3)


MENDS: Sequence[Callable[[Candidate, Trial], Candidate]] = (locked_open, charged_anew, held_before_the_check)
"""What is set right with a candidate, in this order, each only where the trial before it leaves something broken."""


def _charged_no_longer(trial: Trial) -> Sequence[str]:
    return [one.parts[0] for one in trial.broken_anew() if one.name == CHARGED and one.parts[0] in trial.after.tanks]


def _pumped_now(trial: Trial) -> Iterator[PumpedFacts]:
    anew = {one.parts for one in trial.broken_anew() if one.name == PUMPED}
    return (one for one in trial.after.report.facts.pumped if (*one.heaters, one.part) in anew)
