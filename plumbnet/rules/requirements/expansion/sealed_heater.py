"""A heater that is closed and from which not even a relief valve can be reached."""

from collections.abc import Iterator

from plumbnet.rules.acceptors import MayAccept
from plumbnet.rules.deciding_values import limit_of_heater
from plumbnet.rules.example_layouts import CLOSED_HOUSE, TANK_HOUSE
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import FIRES_ON_FLOW, closed, first_stops, fit_a_tank

BAD = CLOSED_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}  # <- sealed-heater
""")


@requirement(
    "sealed-heater",
    Severity.ERROR,
    bad=BAD,
    good=TANK_HOUSE,
    asks="Something opens before a closed heater breaks.",
    of="heaters",
    may_accept=MayAccept.NOBODY,
    held_to=(limit_of_heater,),
)
def sealed_heater(facts: Facts, _profile: Profile) -> Iterator[Answer]:
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
        elif heater.ladder:
            first = heater.ladder[0]
            yield Met((heater.name,), f"{first.outlet} opens first, at {facts.pressure(first.opens_pa)}")
        else:
            yield NotApplicable((heater.name,), FIRES_ON_FLOW)
