"""A circuit with too little pressure at its highest place."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import CIRCUIT
from plumbnet.rules.facts import ROUNDING_PA, Facts, LowFacts, Use
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import more_pressure, when

BAD = CIRCUIT.altered("""
  loop: {kind: filling_loop, fill: 12 psi}
  tank: {kind: expansion_tank, volume: 8 gal, precharge: 12 psi}
  attic: {kind: emitter, volume: 4 gal, elevation: 25 ft}  # <- circuit-top-below-least
""")


@requirement(
    "circuit-top-below-least",
    Severity.WARNING,
    bad=BAD,
    good=CIRCUIT,
    rests_on="least_at_top",
    asks="The highest place of water that a pump drives round stands at its least pressure.",
    of="heaters",
)
def circuit_top_below_least(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Too little stands at the highest place of water that a pump drives round.

    Cold, it needs a margin there above the air, so that no air comes out or is drawn in, and above that what keeps the
    water liquid once it is hotter than it boils in the open. What stands open to the air is not held to it. Fill the
    circuit higher, within its ratings; the charge of its tank goes with it.
    """
    told: set[str] = set()
    for low in sorted(facts.lows, key=lambda each: (-each.vapour_pa, each.name)):  # of a place, who needs most there
        if low.use is not Use.HEATER:
            continue
        measured = Measured(low.least_pa, profile.least_at_top.value_pa + low.vapour_pa, PRESSURE, at_least=True)
        if not low.is_driven or low.is_vented:
            why = "no pump drives its water round" if not low.is_driven else "it stands open to the air"
            yield NotApplicable((low.name,), why)
        elif low.is_dry:
            yield NotApplicable((low.name,), "no water stands there, which is worse and told first")
        elif low.least_pa >= measured.bound - ROUNDING_PA:
            yield Met((low.name,), measured=measured)
        elif low.at in told:
            yield NotApplicable((low.name,), f"its highest place is {low.at}, of which is told already")
        else:
            told.add(low.at)
            yield _too_low(facts, low, measured)
    for name in facts.dry_heaters:
        yield NotApplicable((name,), NO_WATER)


def _too_low(facts: Facts, low: LowFacts, measured: Measured) -> Breach:
    vapour = f", {facts.pressure(low.vapour_pa)} of it to stay liquid" if low.vapour_pa else ""
    return Breach(
        low.parts,
        f"{facts.pressure(low.least_pa)} stands at {low.at} at {facts.length(low.elevation_m)}, the highest "
        f"place of what {low.name} warms{when(low)}; it needs {facts.pressure(measured.bound)}{vapour}.",
        more_pressure(facts, low, measured.bound - low.least_pa),
        measured,
    )
