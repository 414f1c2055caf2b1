"""A tank that the valve at its heater would part from it, where the rules ask for that valve."""

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
rules: upc-2024
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
  stop: valve  # <- control-upstream-of-valve
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> meter -> split -> stop -> heater -> tap.hot
  - split -> tank
""")

GOOD = BAD.altered("""
  stop: valve
runs:
  - street -> meter -> stop -> split -> heater -> tap.hot
  - split -> tank
""")


@requirement(
    "control-upstream-of-valve",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="valve_at_heater",
    asks="The valve at a heater, which the rules ask for, does not part it from the tank that it counts on.",
    of="heaters with an expansion tank",
)
def control_upstream_of_valve(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """The valve at a heater, which the rules ask for, stands between the heater and the tank that it counts on.

    Shut while the heater is hot, it leaves the heater closed with no tank. The valve is right where it is: connect the
    tank between the valve and the heater, or see to it that nobody shuts it before the heat is off.
    """
    if not profile.valve_at_heater.is_asked or profile.valve_before_tank.is_asked:
        yield NOT_ASKED
        return
    for valve in dict.fromkeys(name for heater in facts.heaters for name in heater.valves_to_tank):
        behind = [heater for heater in facts.heaters if valve in heater.valves_to_tank]
        tanks = list(dict.fromkeys(name for heater in behind for name in heater.tanks))
        names = listed([heater.name for heater in behind])
        yield Breach(
            (valve, *(heater.name for heater in behind)),
            f"{valve}, if it is shut, parts {names} from {listed(tanks)}.",
            f"Leave a valve at the heater where it is, and connect {listed(tanks)} between the two; or tag {valve}: "
            "not to be shut while there is heat.",
        )
    for heater in facts.heaters:
        if heater.tanks and not heater.valves_to_tank:
            yield Met((heater.name, *heater.tanks), "no such valve stands between")
