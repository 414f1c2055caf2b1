"""A safety relief valve that carries off less heat than its heater puts in."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.rule_profile import Profile

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF, capacity: 30000 Btu/h}  # <- relief-below-input
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF, capacity: 40000 Btu/h}")


@finding("relief-below-input", Severity.ERROR, bad=BAD, good=GOOD)
def relief_below_input(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A safety relief valve is rated to carry off less heat than the heaters it serves put in.

    With the thermostat stuck it would open and the pressure would climb all the same. Fit a larger one.
    """
    for relief in facts.reliefs:
        if relief.capacity_w is not None and relief.serves_w is not None and relief.capacity_w < relief.serves_w:
            yield Breach(
                (relief.name, *relief.touches),
                f"{relief.name} carries off {facts.power(relief.capacity_w)}; what it serves puts in "
                f"{facts.power(relief.serves_w)}.",
                f"Fit a relief valve rated for at least {facts.power(relief.serves_w)}.",
            )
