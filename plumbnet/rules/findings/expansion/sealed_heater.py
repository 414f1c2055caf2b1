"""A heater that is closed and from which not even a relief valve can be reached."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import CLOSED_HOUSE, TANK_HOUSE
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Breach, MayAccept, Severity, finding
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import closed, first_stops, fit_a_tank

BAD = CLOSED_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- sealed-heater
""")


@finding("sealed-heater", Severity.ERROR, bad=BAD, good=TANK_HOUSE, may_accept=MayAccept.NOBODY)
def sealed_heater(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater is closed and no relief valve can be reached: heated, something breaks.

    Turn the heater off and keep it off until a temperature and pressure relief valve is fitted to its own
    tapping with nothing between. That makes it safe and not yet right: then fit a control for the expansion.
    """
    for heater in facts.heaters:
        if heater.verdict is Verdict.SEALED:
            yield Breach(
                (heater.name, *first_stops(heater)),
                f"DANGER: {closed(facts, heater)} No relief valve can open; heated, something breaks.",
                "Turn the heater off and keep it off until a relief valve is on its own tapping with nothing between. "
                f"That makes it safe, not right. {fit_a_tank(facts, heater)}",
            )
