"""A reducer past which water comes to what lies behind it, so that more stands there than its set."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import ROUNDING_PA, Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 68 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  reducer: {kind: pressure_reducer, set: 40 psi}  # <- reducer-bypassed
  far: tee
  pump: {kind: circulator, head: 70 ft}
  tap: fixture
runs:
  - street -> split -> heater -> reducer -> far -> tap.hot
  - far -> pump -> split
""")

GOOD = BAD.altered("  pump: {kind: circulator, head: 70 ft, check: true}")


@requirement(
    "reducer-bypassed",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    asks="Water comes to what lies behind a reducer through the reducer alone.",
    of="pressure reducers",
)
def reducer_bypassed(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """Water comes past a reducer, by a return without a check or an open valve, and more than its set stands behind it.

    The reducer is shut and holds nothing back: taps and vessels behind it stand at the pressure before it. Fit a check
    that keeps water from coming that way, or shut the valve; better, let the return of a zone end behind its reducer.
    """
    for one in facts.reducers:
        if one.outlet_pa is None:
            yield NotApplicable((one.name,), NO_WATER)
        elif one.passed_by and one.outlet_pa > one.set_pa + ROUNDING_PA:
            stands, own = facts.pressure(one.outlet_pa), facts.pressure(one.set_pa)
            yield Breach(
                (one.name,),
                f"{one.name} is bypassed: water comes past it by way of {listed(one.passed_by)}, and {stands} stands "
                f"behind it where it is set to {own}.",
                f"Let no water come back that way: fit a check there or shut what stands open, or let the return of "
                f"the zone behind {one.name} end behind it.",
                Measured(one.outlet_pa, one.set_pa, PRESSURE),
            )
        else:
            yield Met((one.name,), "water comes past it on no other way")
