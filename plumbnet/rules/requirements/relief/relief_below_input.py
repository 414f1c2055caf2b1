"""A safety relief valve that carries off less heat than its heater puts in."""

from collections.abc import Iterator

from plumbnet.layout.units import POWER
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts, ReliefFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, Untold
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF, capacity: 30000 Btu/h}  # <- relief-below-input
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF, capacity: 40000 Btu/h}")


@requirement(
    "relief-below-input",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="A safety relief valve carries off at least the heat that the heaters it serves put in.",
    of="safety relief valves",
)
def relief_below_input(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A safety relief valve is rated to carry off less heat than the heaters it serves put in.

    With the thermostat stuck it would open and the pressure would climb all the same. Fit a larger one.
    """
    for relief in facts.reliefs:
        missing = _missing(relief)
        if missing:
            yield Untold((relief.name, *relief.touches), listed(missing))
        elif relief.capacity_w is not None and relief.serves_w is not None:
            yield _judged(facts, relief, Measured(relief.capacity_w, relief.serves_w, POWER, at_least=True))


def _missing(relief: ReliefFacts) -> list[str]:
    """What the file leaves out."""
    missing = [f"the capacity of {relief.name}"] if relief.capacity_w is None else []
    return missing + (["the input of what it serves"] if relief.serves_w is None else [])


def _judged(facts: Facts, relief: ReliefFacts, measured: Measured) -> Answer:
    if measured.value >= measured.bound:
        return Met((relief.name, *relief.touches), measured=measured)
    return Breach(
        (relief.name, *relief.touches),
        f"{relief.name} carries off {facts.power(measured.value)}; what it serves puts in "
        f"{facts.power(measured.bound)}.",
        f"Fit a relief valve rated for at least {facts.power(measured.bound)}.",
        measured,
    )
