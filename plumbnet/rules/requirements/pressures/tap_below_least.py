"""A tap at which less stands than the profile wants there."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import ROUNDING_PA, Facts, LowFacts, Use
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
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


@requirement(
    "tap-below-least",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="least_at_tap",
    asks="No less than the least pressure stands at a tap with nothing running.",
    of="taps",
)
def tap_below_least(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Less stands at a tap than it needs while it runs.

    What stands there with every fixture shut is the most that can be left once it runs. Where the supply falls by day,
    it counts at its lowest. Raise the pressure there, or fit a booster.
    """
    least_pa, lows = profile.least_at_tap.value_pa, facts.low_at
    below = [one for one in facts.lows if one.use is Use.TAP and _is_below(one, least_pa)]
    for tap in facts.taps:
        low = lows.get(tap.name)
        if low is None or low.is_dry:
            yield NotApplicable((tap.name,), NO_WATER if low is None else "no water comes so high, which is told first")
            continue
        measured = Measured(low.least_pa, least_pa, PRESSURE, at_least=True)
        if not _is_below(low, least_pa):
            yield Met((tap.name,), measured=measured)
        else:
            yield Breach(
                (tap.name,),
                f"{facts.pressure(low.least_pa)} stands at {low.name} at {facts.length(low.elevation_m)}{when(low)}; "
                f"the least is {facts.pressure(least_pa)}.",
                more_pressure(facts, low, least_pa - worst_pa(below, low)),
                measured,
            )


def _is_below(low: LowFacts, least_pa: float) -> bool:
    return not low.is_dry and low.least_pa < least_pa - ROUNDING_PA
