"""An expansion relief valve set no lower than the safety relief valve it is to spare."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import LETOFF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = LETOFF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 125 psi, temperature: 210 degF}}
  letoff: {kind: expansion_relief, pressure: 130 psi}  # <- expansion-relief-above-safety
""")


@requirement(
    "expansion-relief-above-safety",
    Severity.ERROR,
    bad=BAD,
    good=LETOFF_HOUSE,
    asks="An expansion relief valve opens before the safety relief valve it spares.",
    of="expansion relief valves",
)
def expansion_relief_above_safety(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """An expansion relief valve is set at or above the safety relief valve, which therefore opens first.

    The last safety device then works at every heat-up and wears out. Set the expansion relief lower.
    """
    for relief in facts.expansion_reliefs:
        if relief.safety_pa is None:
            yield NotApplicable((relief.name,), "no safety relief valve stands in its zone")
        elif relief.set_pa < relief.safety_pa:
            yield Met((relief.name,), measured=Measured(relief.set_pa, relief.safety_pa, PRESSURE))
        else:
            yield Breach(
                (relief.name,),
                f"{relief.name} is set to {facts.pressure(relief.set_pa)}, no lower than the safety relief at "
                f"{facts.pressure(relief.safety_pa)}.",
                "Fit an expansion relief valve set between the static pressure and the limit.",
                Measured(relief.set_pa, relief.safety_pa, PRESSURE),
            )
