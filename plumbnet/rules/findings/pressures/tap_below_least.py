"""A tap at which less stands than the profile wants there."""

from collections.abc import Iterator

from plumbnet.rules.answer import Answer, Breach
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import ROUNDING_PA, Facts, Use
from plumbnet.rules.finding import Severity, finding
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import more_pressure, when, worst_pa

BAD = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 30 psi}
  split: tee
  kitchen: fixture
  attic: {kind: fixture, elevation: 55 ft}  # <- tap-below-least
runs:
  - street -> split -> kitchen.cold
  - split -> attic.cold
""")

GOOD = BAD.altered("  street: {kind: main, pressure: 60 psi}")


@finding("tap-below-least", Severity.WARNING, bad=BAD, good=GOOD, rests_on="least_at_tap")
def tap_below_least(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Less stands at a tap than it needs while it runs.

    What stands there with every fixture shut is the most that can be left once it runs. Where the supply falls by day,
    it counts at its lowest. Raise the pressure there, or fit a booster.
    """
    least_pa = profile.least_at_tap.value_pa
    below = [
        one for one in facts.lows if one.use is Use.TAP and not one.is_dry and one.least_pa < least_pa - ROUNDING_PA
    ]
    for low in below:
        yield Breach(
            (low.name,),
            f"{facts.pressure(low.least_pa)} stands at {low.name} at {facts.length(low.elevation_m)}{when(low)}; "
            f"the least is {facts.pressure(least_pa)}.",
            more_pressure(facts, low, least_pa - worst_pa(below, low)),
        )
