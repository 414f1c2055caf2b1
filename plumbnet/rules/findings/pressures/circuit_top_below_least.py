"""A circuit with too little pressure at its highest place."""

from collections.abc import Iterator

from plumbnet.rules.answer import Answer, Breach
from plumbnet.rules.example_layouts import CIRCUIT
from plumbnet.rules.facts import ROUNDING_PA, Facts
from plumbnet.rules.finding import Severity, finding
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import more_pressure, when

BAD = CIRCUIT.altered("""
  loop: {kind: filling_loop, fill: 12 psi}
  tank: {kind: expansion_tank, volume: 8 gal, precharge: 12 psi}
  attic: {kind: emitter, volume: 4 gal, elevation: 25 ft}  # <- circuit-top-below-least
""")


@finding("circuit-top-below-least", Severity.WARNING, bad=BAD, good=CIRCUIT, rests_on="least_at_top")
def circuit_top_below_least(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Too little stands at the highest place of water that a pump drives round.

    Cold, it needs a margin there above the air, so that no air comes out or is drawn in, and above that what keeps the
    water liquid once it is hotter than it boils in the open. What stands open to the air is not held to it. Fill the
    circuit higher, within its ratings; the charge of its tank goes with it.
    """
    told: set[str] = set()
    for low in sorted(facts.lows, key=lambda each: (-each.vapour_pa, each.name)):  # of a place, who needs most there
        needed_pa = profile.least_at_top.value_pa + low.vapour_pa
        is_held = low.is_driven and not low.is_vented and not low.is_dry
        if is_held and low.least_pa < needed_pa - ROUNDING_PA and low.at not in told:
            told.add(low.at)
            vapour = f", {facts.pressure(low.vapour_pa)} of it to stay liquid" if low.vapour_pa else ""
            yield Breach(
                low.parts,
                f"{facts.pressure(low.least_pa)} stands at {low.at} at {facts.length(low.elevation_m)}, the highest "
                f"place of what {low.name} warms{when(low)}; it needs {facts.pressure(needed_pa)}{vapour}.",
                more_pressure(facts, low, needed_pa - low.least_pa),
            )
