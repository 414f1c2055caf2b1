"""A safety relief valve set above what the heater or the part beside it is rated for."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import ROUNDING_PA, Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.rule_profile import Profile

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h, rating: 125 psi}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}  # <- relief-above-rating
""")

GOOD = BAD.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h, rating: 150 psi}
""")


@finding("relief-above-rating", Severity.ERROR, bad=BAD, good=GOOD)
def relief_above_rating(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A safety relief valve opens only above the working pressure that the part it protects is rated for.

    The part may fail before the valve opens. Fit a valve set at or below the rating.
    """
    for relief in facts.reliefs:
        if relief.rated is not None and relief.rating_pa is not None and relief.set_pa > relief.rating_pa + ROUNDING_PA:
            yield Breach(
                (relief.name, relief.rated),
                f"{relief.name} is set to {facts.pressure(relief.set_pa)}; {relief.rated} is rated for "
                f"{facts.pressure(relief.rating_pa)} at its height.",
                f"Fit a relief valve set to {facts.pressure(relief.rating_pa)} or less.",
            )
