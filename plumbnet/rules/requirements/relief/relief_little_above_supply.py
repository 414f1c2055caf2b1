"""A relief valve of a water heater set less above its supply than the rules ask for."""

from collections.abc import Iterator

from plumbnet.layout.model import Circuit
from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, NOT_ASKED, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import BETWEEN_SCALES_PA

BAD = RELIEF_HOUSE.altered("""
plumbnet: 1
rules: irc-2021
parts: ...
  street: {kind: main, pressure: 80 psi}
  relief: {kind: relief_valve, pressure: 100 psi, temperature: 210 degF}  # <- relief-little-above-supply
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 125 psi, temperature: 210 degF}")


@requirement(
    "relief-little-above-supply",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="relief_above_static",
    practice="common practice: how far above its supply a relief valve is set, its maker says",
    asks="A water heater's relief valve is set a given pressure above what stands at it with nothing heated.",
    of="safety relief valves",
)
def relief_little_above_supply(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A relief valve of a water heater is set less above the pressure of the system than the rules ask for.

    It then lifts at each swing of the supply, scales up and sticks. The valve stays: lower the pressure before it with
    a reducer, or have one of a higher set fitted, as far as the heater is rated for it. One whose supply stands above
    its set is a finding of its own, `relief-runs`; valves of heating circuits are not meant.
    """
    if profile.relief_above_static is None:
        yield NOT_ASKED
        return
    asked_pa = profile.relief_above_static.value_pa
    for relief in facts.reliefs:
        if facts.circuit_of(relief.name) is Circuit.HEATING:
            yield NotApplicable((relief.name,), "it guards a heating circuit")
        elif relief.static_pa is None:
            yield NotApplicable((relief.name,), NO_WATER)
        elif relief.runs:
            yield NotApplicable((relief.name,), "its supply holds it open, which is worse and told first")
        else:
            measured = Measured(relief.set_pa, relief.static_pa + asked_pa, PRESSURE, at_least=True)
            if relief.set_pa >= measured.bound - BETWEEN_SCALES_PA:
                yield Met((relief.name,), measured=measured)
            else:
                yield Breach(
                    (relief.name,),
                    f"{relief.name} is set to {facts.pressure(relief.set_pa)}, less than {facts.pressure(asked_pa)} "
                    f"above the {facts.pressure(relief.static_pa)} that stand there with nothing heated.",
                    f"Lower the static pressure there to {facts.pressure(max(0.0, relief.set_pa - asked_pa))} or less, "
                    "or have a valve of a higher set fitted, no higher than the heater is rated for; it is never left "
                    "out.",
                    measured,
                )
