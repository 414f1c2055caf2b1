"""Water so hot that it boils at the highest place of the loop it is driven round."""

from collections.abc import Iterator

from plumbnet.layout.units import TEMPERATURE
from plumbnet.rules.example_layouts import CIRCUIT
from plumbnet.rules.facts import Facts, Use
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import NO_PLAIN_WATER, more_pressure, when

BAD = CIRCUIT.altered("""
  loop: {kind: filling_loop, fill: 14 psi}
  tank: {kind: expansion_tank, volume: 8 gal, precharge: 14 psi}
  boiler: {kind: boiler, volume: 5 gal, setpoint: 225 degF, relief: {pressure: 50 psi}}
  attic: {kind: emitter, volume: 4 gal, elevation: 25 ft}  # <- loop-above-boiling
""")

GOOD = BAD.altered("""
  loop: {kind: filling_loop, fill: 30 psi}
  tank: {kind: expansion_tank, volume: 8 gal, precharge: 30 psi}
""")


@requirement(
    "loop-above-boiling",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="Water does not boil at the highest place of what a heater warms.",
    of="heaters",
)
def loop_above_boiling(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A heater is set so hot that its water boils at the highest place of what it warms.

    At the heater the column of water above it holds the steam down; at the top of the loop it does not. A loop behind a
    mixing valve counts as hot as the heater is set, for a valve may fail. Lower the setpoint, or raise the pressure of
    the circuit within its ratings.
    """
    boiling = {one.name for one in facts.heaters if one.boils_k is not None and one.hot_k >= one.boils_k}
    for low in facts.lows:
        if low.use is not Use.HEATER:
            continue
        if low.name in boiling:
            yield NotApplicable((low.name,), "its water boils in the heater itself, which is told first")
        elif low.hot_k is None or low.boils_k is None:
            yield NotApplicable((low.name,), NO_PLAIN_WATER)
        elif low.hot_k < low.boils_k:
            yield Met((low.name,), measured=Measured(low.hot_k, low.boils_k, TEMPERATURE))
        else:
            boils = facts.temperature(low.boils_k)
            raised = more_pressure(facts, low, profile.least_at_top.value_pa + low.vapour_pa - low.least_pa)
            yield Breach(
                low.parts,
                f"{low.name} is set to {facts.temperature(low.hot_k)}; at {low.at} at {facts.length(low.elevation_m)} "
                f"{facts.pressure(low.least_pa)} stands{when(low)}, and water boils there at {boils}.",
                f"Set {low.name} below {boils}. Or else: {raised[:1].lower()}{raised[1:]}",
                Measured(low.hot_k, low.boils_k, TEMPERATURE),
            )
    for name in facts.dry_heaters:
        yield NotApplicable((name,), NO_WATER)
