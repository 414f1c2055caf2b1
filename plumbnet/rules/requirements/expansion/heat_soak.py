"""A large flow-through heater whose water goes on warming once the tap is shut."""

from collections.abc import Iterator

from plumbnet.layout.units import TEMPERATURE_DIFFERENCE, VOLUME, show
from plumbnet.physics.fluids import ATMOSPHERE_PA, growth
from plumbnet.physics.vessels import HEAT_SOAK_FROM_M3, HEAT_SOAK_K
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import ROUNDING_PA, Facts, HeaterFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import agreeing, first_stops, listed

BAD = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  tankless:  # <- heat-soak
    {kind: tankless_heater, volume: 3 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> meter -> tankless -> tap.hot
""")

GOOD = BAD.altered("""
  tankless:
    {kind: tankless_heater, volume: 0.5 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
""")


@requirement(
    "heat-soak",
    Severity.NOTE,
    bad=BAD,
    good=GOOD,
    asks="What a large flow-through heater gives its water once the tap is shut finds room.",
    of="heaters that fire on flow",
)
def heat_soak(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A closed flow-through heater holds so much water that it matters what its hot exchanger gives once the tap shuts.

    The verdict takes it to be cold while nothing runs. The rise, 20 K and no further than boiling, is an own estimate;
    a heater of one home holds a litre or two and is left out. Fit a small expansion tank in its cold pipe.
    """
    for heater in facts.heaters:
        if heater.verdict is not Verdict.ON_DEMAND:
            if heater.on_flow:
                yield NotApplicable((heater.name,), "its water is open, or kept hot by a pump")
            continue
        rise_k, grows_m3 = _soaks(heater)
        if heater.heated_volume_m3 < HEAT_SOAK_FROM_M3:
            yield Met((heater.name,), measured=Measured(heater.heated_volume_m3, HEAT_SOAK_FROM_M3, VOLUME))
        elif grows_m3 > 0.0:
            taken, advice = _taken(heater)
            yield Breach(
                (heater.name, *first_stops(heater)),
                f"{heater.name} holds {facts.volume(heater.heated_volume_m3)} that goes on warming once the tap "
                f"is shut: by an estimate of {show(rise_k, TEMPERATURE_DIFFERENCE, facts.units, 2)} it grows by "
                f"{facts.volume(grows_m3)}; {taken}.",
                advice,
            )
        else:
            yield NotApplicable((heater.name,), "no plain water stands in it that could go on warming")


def _soaks(heater: HeaterFacts) -> tuple[float, float]:
    """How much warmer its water gets, and by how much it grows; nothing where it is no plain water, or none."""
    if heater.static_pa is None or heater.boils_k is None or heater.boils_k <= heater.hot_k:
        return 0.0, 0.0
    soaked_k = min(heater.hot_k + HEAT_SOAK_K, heater.boils_k)
    share = growth(heater.hot_k, soaked_k, pressure_abs_pa=heater.static_pa + ATMOSPHERE_PA)
    return soaked_k - heater.hot_k, share * heater.heated_volume_m3


def _taken(heater: HeaterFacts) -> tuple[str, str]:
    """What takes that growth, and what to do."""
    bound_pa = heater.limit_pa + ROUNDING_PA
    takers = [rung.outlet for rung in heater.ladder if rung.role.is_control and rung.opens_pa <= bound_pa]
    if takers:
        return agreeing(takers, "takes") + " it", f"Nothing need be done while {listed(takers)} can take it."
    return (
        "nothing below the limit takes it until a tap is opened",
        "Fit a small expansion tank in its cold pipe, on the building's side of what closes it.",
    )
