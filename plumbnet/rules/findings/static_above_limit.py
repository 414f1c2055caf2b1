"""Static pressure above what the profile allows where people draw water."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

BAD = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 95 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture  # <- static-above-limit
runs:
  - street -> heater -> tap.hot
"""

GOOD = BAD.replace("95 psi", "70 psi").replace("  # <- static-above-limit", "")

ROUNDING_PA = 1.0
"""Pressures are compared to one pascal, which is finer than any gauge and coarser than unit conversion."""


@finding("static-above-limit", Severity.ERROR, bad=BAD, good=GOOD)
def static_above_limit(facts: Facts, profile: Profile) -> Iterator[Breach]:
    """The standing pressure at a fixture is above the highest the profile allows.

    Taps, hoses and appliances suffer, and no expansion tank has any room left to work in. Fit a reducer.
    """
    limit_pa = profile.distribution_limit.value_pa
    for zone in facts.zones:
        if zone.draw is not None and zone.draw_pa is not None and zone.draw_pa > limit_pa + ROUNDING_PA:
            yield Breach(
                (zone.draw,),
                f"{facts.pressure(zone.draw_pa)} stands at {zone.draw}; the limit is {facts.pressure(limit_pa)}.",
                f"Fit a pressure reducer set to {facts.pressure(limit_pa)} or less.",
            )
