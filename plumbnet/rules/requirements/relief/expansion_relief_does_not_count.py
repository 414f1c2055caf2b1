"""A heater held by an expansion relief valve that the rules do not count as a control, or not at its set."""

from collections.abc import Iterator

from plumbnet.layout.model import Role
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import ROUNDING_PA, Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = Example("""\
plumbnet: 1
rules: npc-2020
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  spill: {kind: expansion_relief, pressure: 700 kPa}
  heater:  # <- expansion-relief-does-not-count
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
runs:
  - street -> meter -> split -> heater
  - split -> spill
""")

GOOD = BAD.altered("  spill: {kind: expansion_relief, pressure: 550 kPa}")


@requirement(
    "expansion-relief-does-not-count",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="expansion_relief",
    asks="A heater that an expansion relief valve holds is held by one that the rules count.",
    of="heaters",
)
def expansion_relief_does_not_count(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A heater is held by an expansion relief valve that the rules do not count as its control, or not at its set.

    Some codes know only tanks; others take a relief valve up to a set, or in a licensed design alone. Fit an expansion
    tank that takes the growth before the valve opens; the valve may stay.
    """
    for heater in facts.heaters:
        held_by = list(_held_by(facts, heater))
        if not held_by:
            yield NotApplicable((heater.name,), "no expansion relief valve holds it")
        for name, set_pa in held_by:
            why = _why_not(facts, profile, set_pa)
            if why:
                yield Breach(
                    (heater.name, name),
                    f"{heater.name} is held by {name}, set to {facts.pressure(set_pa)}, {why}.",
                    "Fit an expansion tank that takes the growth before it opens, or have the design approved.",
                )
            else:
                yield Met((heater.name, name), "the rules count it")


def _held_by(facts: Facts, heater: HeaterFacts) -> Iterator[tuple[str, float]]:
    """Expansion relief valves that open when all is hot, each with its set."""
    if heater.verdict is not Verdict.CONTROLLED or heater.settled_pa is None:
        return
    sets = {relief.name: relief.set_pa for relief in (*facts.reliefs, *facts.expansion_reliefs)}
    for rung in heater.ladder:
        if rung.role is Role.EXPANSION_RELIEF and rung.opens_pa <= heater.settled_pa + ROUNDING_PA:
            yield rung.outlet, sets[rung.outlet]


def _why_not(facts: Facts, profile: Profile, set_pa: float) -> str:
    """Why a valve of that set does not count; nothing where it does."""
    ruling = profile.expansion_relief
    if ruling.value == "does-not-count":
        return "and the rules do not count a relief valve as a control"
    if ruling.highest_set_pa is not None and not ruling.takes_set(set_pa):
        return f"and the rules count one up to {facts.pressure(ruling.highest_set_pa)} only"
    return "which the rules count only in a licensed design" if ruling.value == "by-design" else ""
