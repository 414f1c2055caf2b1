"""A tank that holds, and is smaller than the sizing method of the rules asks for."""

from collections.abc import Iterator

from plumbnet.layout.units import VOLUME
from plumbnet.rules.deciding_values import limit_of_heater
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import SAME_VOLUME, agreeing

BAD = Example("""\
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 300 kPa}
  check: check_valve
  split: tee
  tank: {kind: expansion_tank, volume: 5 L, precharge: 300 kPa}
  heater:  # <- tank-below-method
    kind: storage_heater
    volume: 100 L
    setpoint: 60 degC
    sizing: uk-4-percent
    relief: {pressure: 700 kPa, temperature: 95 degC}
  tap: fixture
runs:
  - street -> check -> split -> heater -> tap.hot
  - split -> tank
""")

GOOD = BAD.altered("  tank: {kind: expansion_tank, volume: 18 L, precharge: 300 kPa}")


@requirement(
    "tank-below-method",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="sizing",
    asks="The tanks that hold a heater are as large as the sizing method of the rules asks.",
    of="heaters",
    held_to=(limit_of_heater,),
)
def tank_below_method(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """The tanks at hand hold, by what water and gas do; the method by which they are to be sized asks for more.

    A method may count a reserve, a higher temperature or a lower end pressure. Where the code or the contract names the
    method, fit what it asks for.
    """
    for heater in facts.heaters:
        asked_m3 = heater.asked_tank_m3
        if heater.verdict is not Verdict.CONTROLLED or not heater.tanks:
            yield NotApplicable((heater.name,), "no tank holds it")
        elif asked_m3 is None:
            yield NotApplicable((heater.name,), "its method is plain physics, by which the tank is judged")
        else:
            cushions = (facts.system.parts[name].cushion() for name in heater.tanks)
            fitted_m3 = sum(cushion.volume_m3 for cushion in cushions if cushion is not None)
            measured = Measured(fitted_m3, asked_m3, VOLUME, at_least=True)
            if fitted_m3 >= asked_m3 * (1.0 - SAME_VOLUME):
                yield Met((heater.name, *heater.tanks), measured=measured)
                continue
            yield Breach(
                (heater.name, *heater.tanks),
                f"{agreeing(heater.tanks, 'holds')} with {facts.volume(fitted_m3)}; the method "
                f"{heater.asked_method} asks for {facts.volume(asked_m3)}.",
                f"Fit {facts.volume(asked_m3)} or more where that method is the rule.",
                measured,
            )
