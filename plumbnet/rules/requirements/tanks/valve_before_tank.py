"""A valve that can be shut between a heater and its expansion tank, where the rules forbid one."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = Example("""\
plumbnet: 1
rules: en-12828
parts:
  fill: {kind: main, pressure: 20 psi}
  check: vented_dual_check
  boiler: {kind: boiler, volume: 10 gal, setpoint: 180 degF, relief: {pressure: 3 bar}}
  circulator: circulator
  emitter: {kind: emitter, volume: 10 gal}
  back: tee
  stop: valve  # <- valve-before-tank
  tank: {kind: expansion_tank, volume: 15 gal, precharge: 20 psi}
runs:
  - fill -> check -> back
  - boiler.supply -> circulator -> emitter -> back -> boiler.return
  - back -> stop -> tank
""")

GOOD = BAD.altered("  stop: {kind: valve, locked: true}")


@requirement(
    "valve-before-tank",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="valve_before_tank",
    asks="No valve that a hand can shut stands between a heater and its expansion tank.",
    of="heaters with an expansion tank",
)
def valve_before_tank(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A valve that a hand can shut stands between a heater and its expansion tank, and the rules forbid that.

    Shut by mistake, it leaves the heater closed with no tank. Take it out, or where the rules allow a valve for
    service, have one that is locked open.
    """
    if not profile.valve_before_tank.is_asked:
        yield NOT_ASKED
        return
    for valve in dict.fromkeys(name for heater in facts.heaters for name in heater.valves_to_tank):
        behind = [heater for heater in facts.heaters if valve in heater.valves_to_tank]
        tanks = dict.fromkeys(name for heater in behind for name in heater.tanks)
        yield Breach(
            (valve, *(heater.name for heater in behind)),
            f"{valve} can be shut and stands between {listed([one.name for one in behind])} and {listed(list(tanks))}.",
            f"Take {valve} out, or lock it open where the rules allow a locked valve for service.",
        )
    for heater in facts.heaters:
        if heater.tanks and not heater.valves_to_tank:
            yield Met((heater.name, *heater.tanks), "no such valve stands between")
