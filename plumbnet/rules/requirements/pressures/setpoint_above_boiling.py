"""A heater set so hot that its water boils under the pressure at which it stands."""

from collections.abc import Iterator

from plumbnet.layout.units import TEMPERATURE
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import NO_PLAIN_WATER

BAD = Example("""\
plumbnet: 1
units: metric
parts:
  cistern: {kind: open_tank, elevation: 5.1 m}
  boiler: {kind: boiler, volume: 40 L, setpoint: 115 degC, relief: {pressure: 3 bar}}  # <- setpoint-above-boiling
  pump: circulator
  emitter: {kind: emitter, volume: 60 L}
  back: tee
runs:
  - cistern -> back
  - boiler -> pump -> emitter -> back -> boiler
""")

GOOD = BAD.altered("  cistern: {kind: open_tank, elevation: 15 m}")


@requirement(
    "setpoint-above-boiling",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="Water does not boil in a heater at its setpoint.",
    of="heaters",
)
def setpoint_above_boiling(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A heater is set so hot that its water boils under the pressure at which it stands.

    Steam takes up sixteen hundred times the room, and no tank is sized for it; what is said of the growth holds for
    water alone. Lower the setpoint, or raise the pressure of the circuit within its ratings.
    """
    for heater in facts.heaters:
        if heater.boils_k is None:
            yield NotApplicable((heater.name,), NO_PLAIN_WATER)
        elif heater.hot_k < heater.boils_k:
            yield Met((heater.name,), measured=Measured(heater.hot_k, heater.boils_k, TEMPERATURE))
        else:
            yield Breach(
                (heater.name,),
                f"{heater.name} is set to {facts.temperature(heater.hot_k)}; under the "
                f"{facts.pressure(heater.static_pa or 0.0)} at which it stands water boils at "
                f"{facts.temperature(heater.boils_k)}, and the growth told here is that of water alone.",
                f"Set it below {facts.temperature(heater.boils_k)}, or raise the pressure within the ratings.",
                Measured(heater.hot_k, heater.boils_k, TEMPERATURE),
            )
