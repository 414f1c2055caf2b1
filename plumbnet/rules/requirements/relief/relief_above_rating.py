"""A safety relief valve set above what the heater or the part beside it is rated for."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import ROUNDING_PA, Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, Untold
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h, rating: 125 psi}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}  # <- relief-above-rating
""")

GOOD = BAD.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h, rating: 150 psi}
""")


@requirement(
    "relief-above-rating",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="A safety relief valve is set no higher than what it protects is rated for.",
    of="safety relief valves",
)
def relief_above_rating(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A safety relief valve opens only above the working pressure that the part it protects is rated for.

    The part may fail before the valve opens. Fit a valve set at or below the rating.
    """
    for relief in facts.reliefs:
        if relief.rated is None or relief.rating_pa is None:
            yield Untold((relief.name,), f"the rating of {listed(relief.touches) if relief.touches else 'its heater'}")
            continue
        measured = Measured(relief.set_pa, relief.rating_pa, PRESSURE)
        if relief.set_pa <= relief.rating_pa + ROUNDING_PA:
            yield Met((relief.name, relief.rated), measured=measured)
        else:
            yield Breach(
                (relief.name, relief.rated),
                f"{relief.name} is set to {facts.pressure(relief.set_pa)}; {relief.rated} is rated for "
                f"{facts.pressure(relief.rating_pa)} at its height.",
                f"Fit a relief valve set to {facts.pressure(relief.rating_pa)} or less.",
                measured,
            )
