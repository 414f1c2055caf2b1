"""A safety relief valve set so near the static pressure that it weeps."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.deciding_values import below_relief
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = RELIEF_HOUSE.altered("""
  street: {kind: main, pressure: 70 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h}
  relief: {kind: relief_valve, pressure: 75 psi, temperature: 210 degF}  # <- relief-near-static
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}")


@requirement(
    "relief-near-static",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="What stands at a safety relief valve with nothing heated keeps its distance from the set.",
    of="safety relief valves",
    held_to=(below_relief,),
)
def relief_near_static(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """The static pressure stands so near the set of a safety relief valve that the valve weeps.

    A valve that weeps scales up and sticks. Lower the static pressure with a reducer; the valve stays. One whose supply
    stands above its set is a finding of its own, `relief-runs`.
    """
    for relief in facts.reliefs:
        most_pa = profile.highest_below_relief_pa(relief.set_pa)
        if relief.static_pa is None:
            yield NotApplicable((relief.name,), NO_WATER)
        elif relief.runs:
            yield NotApplicable((relief.name,), "its supply holds it open, which is worse and told first")
        elif relief.static_pa <= most_pa:
            yield Met((relief.name,), measured=Measured(relief.static_pa, most_pa, PRESSURE))
        else:
            yield Breach(
                (relief.name,),
                f"{facts.pressure(relief.static_pa)} stands at {relief.name}, which is set to "
                f"{facts.pressure(relief.set_pa)}.",
                f"Lower the static pressure there to {facts.pressure(most_pa)} or less.",
                Measured(relief.static_pa, most_pa, PRESSURE),
            )
