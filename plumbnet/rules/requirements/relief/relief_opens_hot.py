"""A safety relief valve whose temperature element opens too hot."""

from collections.abc import Iterator

from plumbnet.layout.units import TEMPERATURE
from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = RELIEF_HOUSE.altered("""
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, input: 40000 Btu/h}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 240 degF}  # <- relief-opens-hot
""")

GOOD = BAD.altered("  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}")

ROUNDING_K = 0.2
"""Rounding of a relief valve's temperature between the scales: 99 degC is 210.2 degF."""


@requirement(
    "relief-opens-hot",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="A safety relief valve opens before water passes the temperature that the rules name.",
    of="safety relief valves",
    held_to=("relief_temperature",),
)
def relief_opens_hot(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """The temperature element of a safety relief valve opens only above the boiling point at open air.

    Water let off then flashes to steam. Fit a valve whose element opens at the temperature the rules name. A
    circuit that is meant to run hotter than that, as a solar circuit, is not asked.
    """
    most_k = profile.relief_temperature.value_k + ROUNDING_K
    for relief in facts.reliefs:
        if relief.opens_k is None:
            yield NotApplicable((relief.name,), "it relieves pressure only")
            continue
        measured = Measured(relief.opens_k, profile.relief_temperature.value_k, TEMPERATURE)
        if relief.opens_k <= most_k:
            yield Met((relief.name,), measured=measured)
        elif (relief.serves_k or 0.0) >= most_k:
            yield NotApplicable((relief.name,), "what it serves is meant to run hotter")
        else:
            yield Breach(
                (relief.name,),
                f"{relief.name} opens at {facts.temperature(relief.opens_k)}.",
                f"Fit one that opens at {facts.temperature(profile.relief_temperature.value_k)} or less.",
                measured,
            )
