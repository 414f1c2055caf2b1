"""A heater whose expansion has nowhere to go but the relief valve."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.deciding_values import limit_of_heater
from plumbnet.rules.example_layouts import CLOSED_HOUSE
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import FIRES_ON_FLOW, IS_OPEN, closed, controls, first_stops, fit_a_tank

BAD = CLOSED_HOUSE.altered("""
  meter: {kind: meter, check: true}
  heater:  # <- trapped-expansion
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
""")

GOOD = CLOSED_HOUSE.altered("  meter: meter")


@requirement(
    "trapped-expansion",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="What a closed heater's water grows by is taken up, and no place comes above its limit.",
    of="heaters",
    held_to=(limit_of_heater,),
)
def trapped_expansion(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A heater is closed, no tank takes up its expansion, and the pressure passes the limit at each heat-up.

    The safety relief valve then weeps or lifts day after day, scales up, and one day does not open.
    Fit an expansion tank in the cold pipe between the last check and the heater, sized and charged for the
    line pressure there, or another control that the local code accepts.
    """
    for heater in facts.heaters:
        if heater.verdict is not Verdict.TRAPPED:
            yield _untrapped(heater)
        elif heater.reaches_a_tank:
            yield NotApplicable((heater.name,), "it has a tank, of which is told whether it is enough")
        else:
            yield Breach((heater.name, *first_stops(heater)), closed(facts, heater), fit_a_tank(facts, heater))


def _untrapped(heater: HeaterFacts) -> Answer:
    match heater.verdict:
        case Verdict.OPEN:
            return NotApplicable((heater.name,), IS_OPEN)
        case Verdict.ON_DEMAND:
            return NotApplicable((heater.name,), FIRES_ON_FLOW)
        case Verdict.SEALED:
            return NotApplicable((heater.name,), "not even a relief valve can open, which is worse and told first")
    settled_pa = heater.settled_pa
    measured = None if settled_pa is None else Measured(settled_pa, heater.limit_pa, PRESSURE)
    return Met((heater.name, *controls(heater)), measured=measured)
