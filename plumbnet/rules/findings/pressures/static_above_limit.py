"""Static pressure above what the profile allows where people draw water."""

from collections.abc import Iterator

from plumbnet.rules.deciding_values import highest_static
from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import ROUNDING_PA, Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.rule_profile import Profile

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


@finding("static-above-limit", Severity.ERROR, bad=BAD, good=GOOD, held_to=(highest_static,))
def static_above_limit(facts: Facts, profile: Profile) -> Iterator[Breach]:
    """The standing pressure at a fixture is above the highest the profile allows.

    Taps, hoses and appliances suffer, and an expansion tank has no room left to work in. Fit a pressure
    reducer; it closes the system, so an expansion tank behind it comes with it.
    """
    limit_pa = profile.highest_static.value_pa
    for zone in facts.zones:
        if zone.draw is not None and zone.draw_pa is not None and zone.draw_pa > limit_pa + ROUNDING_PA:
            limit = facts.pressure(limit_pa)
            yield Breach(
                (zone.draw,),
                f"{facts.pressure(zone.draw_pa)} stands at {zone.draw} with no water running; the limit is {limit}.",
                f"Fit a pressure reducer, or set the one that is there, so that no fixture stands above {limit}; "
                "a reducer closes the system, so look for the expansion tank behind it.",
            )
