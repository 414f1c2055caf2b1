"""A safety relief valve set higher than the rules allow, whatever its heater is rated for."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Measured, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import BETWEEN_SCALES_PA

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, rating: 200 psi}
  relief: {kind: relief_valve, pressure: 175 psi, temperature: 210 degF}  # <- relief-set-too-high
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}")


@requirement(
    "relief-set-too-high",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="relief_set",
    asks="A safety relief valve is set no higher than the rules allow.",
    of="safety relief valves",
)
def relief_set_too_high(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A safety relief valve is set higher than the rules allow, whatever its heater is rated for.

    Pipes, fixtures and hoses bear what it lets by. Fit one with a lower set, on the same tapping, with nothing between.
    """
    most = profile.relief_set
    if most is None:
        yield NOT_ASKED
        return
    for relief in facts.reliefs:
        if relief.set_pa <= most.value_pa + BETWEEN_SCALES_PA:
            yield Met((relief.name,), measured=Measured(relief.set_pa, most.value_pa, PRESSURE))
        else:
            yield Breach(
                (relief.name,),
                f"{relief.name} is set to {facts.pressure(relief.set_pa)}; the rules allow "
                f"{facts.pressure(most.value_pa)} at most.",
                f"Fit one set to {facts.pressure(most.value_pa)} or less, and not above the heater's rating.",
                Measured(relief.set_pa, most.value_pa, PRESSURE),
            )
