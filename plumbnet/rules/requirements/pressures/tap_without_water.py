"""A tap to which no water comes."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, Use
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
  attic: {kind: fixture, elevation: 75 ft}  # <- tap-without-water
runs:
  - street -> split -> kitchen.cold
  - split -> attic.cold
""")

GOOD = BAD.altered("  street: {kind: main, pressure: 60 psi}")


@requirement(
    "tap-without-water",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="Water comes to every tap, with the supply at its lowest.",
    of="taps",
)
def tap_without_water(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A tap stands so high, or its supply so low, that no water comes to it.

    With every fixture shut the water stands below it, and air is drawn in where somebody opens it. Where the supply
    falls by day, it counts at its lowest. Raise the pressure there, or fit a booster.
    """
    dry, lows = [low for low in facts.lows if low.use is Use.TAP and low.is_dry], facts.low_at
    for tap in facts.taps:
        low = lows.get(tap.name)
        if low is None:
            yield NotApplicable((tap.name,), NO_WATER)
        elif not low.is_dry:
            yield Met((tap.name,), measured=Measured(low.least_pa, 0.0, PRESSURE, at_least=True))
        else:
            yield Breach(
                (tap.name,),
                f"no water comes to {low.name} at {facts.length(low.elevation_m)}: the pressure there would be "
                f"{facts.pressure(low.least_pa)}{when(low)}.",
                more_pressure(facts, low, profile.least_at_tap.value_pa - worst_pa(dry, low)),
                Measured(low.least_pa, 0.0, PRESSURE, at_least=True),
            )
