"""Static pressure above what the profile allows where people draw water."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.deciding_values import highest_static, holding_outdoors
from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import ROUNDING_PA, Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import renewed_first

BAD = PLAIN_HOUSE.altered("""
  street: {kind: main, pressure: 95 psi}
  tap: fixture  # <- static-above-limit
""")

GOOD = BAD.altered("""
  street: ...
  reducer: {kind: pressure_reducer, set: 60 psi}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
runs:
  - street -> reducer -> split -> heater -> tap.hot
  - split -> tank
""")


@requirement(
    "static-above-limit",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="No more than the highest pressure stands at a tap with nothing running.",
    of="taps",
    held_to=(highest_static, holding_outdoors),
)
def static_above_limit(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """The standing pressure at a fixture is above the highest the profile allows.

    Taps, hoses and appliances suffer, and an expansion tank has no room left to work in. Fit a pressure
    reducer; it closes the system, so an expansion tank behind it comes with it. Some codes exempt hose bibbs and
    hydrants, which may then be fed from before the reducer.
    """
    renewed = renewed_first(facts)
    fit = f"{renewed}{'Else fit' if renewed else 'Fit'}"
    for tap in facts.taps:
        limit_pa = profile.highest_static_at_tap_pa(outdoors=tap.is_outdoors)
        if tap.static_pa is None:
            yield NotApplicable((tap.name,), NO_WATER)
        elif limit_pa is None:
            yield NotApplicable((tap.name,), "it is outdoors, and the rules exempt it")
        elif tap.static_pa <= limit_pa + ROUNDING_PA:
            yield Met((tap.name,), measured=Measured(tap.static_pa, limit_pa, PRESSURE))
        else:
            limit = facts.pressure(limit_pa)
            yield Breach(
                (tap.name,),
                f"{facts.pressure(tap.static_pa)} stands at {tap.name} with no water running; the limit is {limit}.",
                f"{fit} a pressure reducer, or set the one that is there, so that no fixture stands above {limit}; "
                "a reducer closes the system, so look for the expansion tank behind it.",
                Measured(tap.static_pa, limit_pa, PRESSURE),
            )
