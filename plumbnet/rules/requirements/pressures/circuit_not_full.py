"""A radiator, or the highest place of what is heated, at which no water stands."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import CIRCUIT
from plumbnet.rules.facts import Facts, Use
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import more_pressure, when

BAD = CIRCUIT.altered("""
  loop: {kind: filling_loop, fill: 8 psi}
  tank: {kind: expansion_tank, volume: 8 gal, precharge: 8 psi}
  attic: {kind: emitter, volume: 4 gal, elevation: 25 ft}  # <- circuit-not-full
""")


@requirement(
    "circuit-not-full",
    Severity.ERROR,
    bad=BAD,
    good=CIRCUIT,
    asks="Water stands at every emitter and at the highest place of what is heated.",
    of="emitters or heaters",
)
def circuit_not_full(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """No water stands at a radiator, at a heater, or at the highest place of a loop that a pump drives.

    The circuit was filled too low for its height: the top holds air, no water goes round there, and below the pressure
    of the air more is drawn in. Fill it higher, and bleed it.
    """
    told: set[str] = set()
    for low in sorted(facts.lows, key=lambda each: (each.use is Use.HEATER, each.at != each.name, each.name)):
        if low.use is Use.TAP:
            continue
        if not low.is_dry:
            yield Met((low.name,), measured=Measured(low.least_pa, 0.0, PRESSURE, at_least=True))
        elif low.at in told:
            yield NotApplicable((low.name,), f"its highest place is {low.at}, of which is told already")
        else:
            told.add(low.at)
            whose = "" if low.at == low.name else f", the highest place of what {low.name} warms"
            yield Breach(
                low.parts,
                f"no water stands at {low.at} at {facts.length(low.elevation_m)}{whose}: the pressure there would be "
                f"{facts.pressure(low.least_pa)}{when(low)}.",
                more_pressure(facts, low, profile.least_at_top.value_pa - low.least_pa),
                Measured(low.least_pa, 0.0, PRESSURE, at_least=True),
            )
    for name in facts.dry_heaters:
        yield NotApplicable((name,), NO_WATER)
