"""A heater whose expansion has nowhere to go but the relief valve."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import CLOSED_HOUSE
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import closed, first_stops, fit_a_tank

BAD = CLOSED_HOUSE.altered("""
  meter: {kind: meter, check: true}
  heater:  # <- trapped-expansion
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
""")

GOOD = CLOSED_HOUSE.altered("  meter: meter")


@finding("trapped-expansion", Severity.ERROR, bad=BAD, good=GOOD)
def trapped_expansion(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater is closed, no tank takes up its expansion, and the pressure passes the limit at each heat-up.

    The safety relief valve then weeps or lifts day after day, scales up, and one day does not open.
    Fit an expansion tank in the cold pipe between the last check and the heater, sized and charged for the
    line pressure there, or another control that the local code accepts.
    """
    for heater in facts.heaters:
        if heater.verdict is Verdict.TRAPPED and not heater.reaches_a_tank:
            yield Breach((heater.name, *first_stops(heater)), closed(facts, heater), fit_a_tank(facts, heater))
