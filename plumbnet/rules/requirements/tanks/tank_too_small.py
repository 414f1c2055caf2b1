"""A tank that is there and takes water, but too little of it below the limit."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.deciding_values import limit_of_heater
from plumbnet.rules.example_layouts import TANK_HOUSE
from plumbnet.rules.facts import Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import SAME_VOLUME, agreeing, fit_a_tank, place_in_words

BAD = TANK_HOUSE.altered("""
  tank: {kind: expansion_tank, volume: 1 gal, precharge: 60 psi}
  heater:  # <- tank-too-small
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
""")


@requirement(
    "tank-too-small",
    Severity.ERROR,
    bad=BAD,
    good=TANK_HOUSE,
    asks="The tanks that a heater pushes into take its growth below the limit.",
    of="heaters",
    held_to=(limit_of_heater,),
)
def tank_too_small(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A tank is there and takes water, but not enough of it below the limit.

    The pressure passes the limit at each heat-up, and the relief valve is the next to open. Exchange the tank
    for a larger one, add another beside it, or set its charge right where that is what is wrong.
    """
    for heater in facts.heaters:
        if not heater.reaches_a_tank:
            yield NotApplicable((heater.name,), "it pushes into no sound tank")
        elif heater.verdict is Verdict.TRAPPED:
            yield Breach((heater.name, *heater.tanks), _shortage(facts, heater), fit_a_tank(facts, heater))
        elif heater.verdict is Verdict.CONTROLLED and heater.settled_pa is not None:
            measured = Measured(heater.settled_pa, heater.limit_pa, PRESSURE)
            yield Met((heater.name, *heater.tanks), measured=measured)
        else:
            yield NotApplicable((heater.name,), f"it is {heater.verdict.value}, whatever the tank")


def _shortage(facts: Facts, heater: HeaterFacts) -> str:
    short = facts.volume(heater.short_m3)
    beyond = next((place for place in heater.broken if place.way), None)
    if beyond is not None and not heater.is_past_limit:
        tanks = agreeing(heater.tanks, "leaves")
        return f"{place_in_words(facts, beyond)}; {tanks} {short} of the growth without room."
    taken_m3 = heater.shared_expansion_m3 - heater.short_m3
    grows, limit = facts.volume(heater.shared_expansion_m3), facts.pressure(heater.limit_pa)
    takes = "nothing" if taken_m3 < heater.shared_expansion_m3 * SAME_VOLUME else facts.volume(taken_m3)
    return (
        f"the water that {agreeing([heater.name, *heater.shares_with], 'heats')} grows by {grows}; below {limit} "
        f"{agreeing(heater.tanks, 'takes')} {takes} of it, and {short} finds no room."
    )
